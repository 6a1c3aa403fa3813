import { describe, expect, it } from 'vitest';
import { codeText } from '../../notebooks/runner/code-text.ts';
import { partsOf } from '../../notebooks/runner/parts.ts';
import { chart, same, show, table, takeShown } from '../../notebooks/runner/show.ts';

describe('a notebook’s source', () => {
  it('is prose in comments that stand alone and code between, cut at blank lines outside of braces', () => {
    const source = `/*
# Title

Text.
*/
import { a } from 'b';

/** A docstring is code. */
function f() {
  show('not at the start of a line');

  return 1;
}
show('one');
show(
  table('two'),
);
/*
## Next
*/

`;
    expect(partsOf(source)).toEqual([
      { kind: 'prose', markdown: '# Title\n\nText.' },
      { kind: 'code', code: "import { a } from 'b';", shows: 0 },
      {
        kind: 'code',
        code: "/** A docstring is code. */\nfunction f() {\n  show('not at the start of a line');\n\n  return 1;\n}\nshow('one');\nshow(\n  table('two'),\n);",
        shows: 2,
      },
      { kind: 'prose', markdown: '## Next' },
    ]);
  });

  it('is escaped where it is coloured', () => {
    expect(codeText("const a = '<b>'; // if x < 1").toString()).toBe(
      '<span class="word">const</span> a = <span class="text">&#39;&lt;b&gt;&#39;</span>; <span class="comment">// if x &lt; 1</span>',
    );
  });
});

describe('what is shown', () => {
  it('is kept in order until it is taken', () => {
    show('text');
    show(chart('title', 'description', { data: { values: [{ a: 1 }] }, mark: 'point' }));
    expect(takeShown().map(({ kind }) => kind)).toEqual(['text', 'chart']);
    expect(takeShown()).toEqual([]);
  });

  it('sets columns of numbers to the right, whatever is not known in them', () => {
    const rows = [
      { n: 1.5 as number | null, t: 'a' },
      { n: null, t: 'b' },
    ];
    expect(table('rows', rows, { number: ({ n }) => n, text: ({ t }) => t })).toMatchObject({
      heads: ['number', 'text'],
      rows: [
        [1.5, 'a'],
        [null, 'b'],
      ],
      numeric: [true, false],
    });
  });

  it('fails where a number is not the report’s', () => {
    expect(same({ share: [0.1 + 0.2, 0.3], verdict: ['shown', 'shown'], none: [null, null] })).toMatchObject({
      values: [{ value: '0.3' }, { value: 'shown' }, { value: '–' }],
    });
    expect(() => same({ share: [0.3001, 0.3] })).toThrow(
      'share: must be the report’s 0.3, found 0.3001'.replace('’', "'"),
    );
    expect(() => same({ verdict: ['shown', 'suggested'] })).toThrow();
    expect(() => same({ none: [null, 0] })).toThrow();
  });
});
