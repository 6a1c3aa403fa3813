import type { TopLevelSpec } from 'vega-lite';
import { describe, expect, it } from 'vitest';
import { ChartError, checkFields } from '../../../pipeline/report/charts/check-spec.ts';
import { cleanSvg, renderChart } from '../../../pipeline/report/charts/render-chart.ts';

const spec = (field: string, more: object = {}): TopLevelSpec =>
  ({
    data: {
      values: [
        { a: 1, b: 2 },
        { a: 2, b: 3 },
      ],
    },
    mark: 'point',
    encoding: { x: { field: 'a', type: 'quantitative' }, y: { field, type: 'quantitative' } },
    ...more,
  }) as TopLevelSpec;

describe('checkFields', () => {
  it('passes fields that each row holds', () => {
    expect(() => checkFields(spec('b'))).not.toThrow();
  });

  it('names the field that is not there', () => {
    expect(() => checkFields(spec('mistyped'))).toThrow(/encoding\.y: field "mistyped" must be in each row/);
  });

  it('finds a field that one row lacks', () => {
    expect(() => checkFields(spec('b', { data: { values: [{ a: 1, b: 2 }, { a: 1 }] } }))).toThrow(
      /row 1 holds a/,
    );
  });

  it('looks at the rows of the layer, where it has its own', () => {
    const layer = [
      { data: { values: [{ c: 1 }] }, mark: 'rule', encoding: { x: { field: 'a', type: 'quantitative' } } },
    ];
    expect(() => checkFields({ data: { values: [{ a: 1 }] }, layer } as TopLevelSpec)).toThrow(ChartError);
  });

  it('looks into expressions', () => {
    const axis = { labelExpr: 'datum.value + datum.nowhere' };
    expect(() =>
      checkFields(spec('b', { encoding: { x: { field: 'a', type: 'quantitative', axis } } })),
    ).toThrow(/nowhere/);
  });

  it('refuses to draw no rows', () => {
    expect(() => checkFields(spec('b', { data: { values: [] } }))).toThrow(/at least one row/);
  });
});

describe('renderChart', () => {
  const text = { id: 'x', title: 'T <b>', description: 'D "q"' };

  it('fails on anything that Vega-Lite warns of', async () => {
    const warned = spec('b', {
      encoding: { x: { field: 'a', type: 'quantitative' }, size: { field: 'b', type: 'nominal' } },
    });
    await expect(renderChart(warned, text)).rejects.toThrow(/Channel size/);
  });

  it('escapes title, description and labels of the rows', async () => {
    const values = [{ a: '<script>alert(1)</script>', b: 1 }];
    const { svg } = await renderChart(
      {
        data: { values },
        mark: 'bar',
        encoding: { x: { field: 'a', type: 'nominal' }, y: { field: 'b', type: 'quantitative' } },
      },
      text,
    );
    expect(svg.toString()).toContain(
      '<title id="x-title">T &lt;b&gt;</title><desc id="x-desc">D &quot;q&quot;</desc>',
    );
    expect(svg.toString()).toContain('&lt;script&gt;');
    expect(svg.toString()).not.toContain('<script');
  });
});

describe('cleanSvg', () => {
  it('cuts numbers of shapes to two decimals, and leaves those that a mark says as they are', () => {
    const { svg } = cleanSvg(
      '<svg width="1" height="1"><path aria-label="A1\u241f60 von 6.451; 0.058 kPa/min" d="M1.23456,2L3.999,4"/></svg>',
      { id: 'f', title: '', description: '' },
    );
    expect(String(svg)).toContain('data-tip="60 von 6.451; 0.058 kPa/min"');
    expect(String(svg)).toContain('d="M1.23,2L3.99,4"');
  });

  it('puts the chart’s id before ids and their uses, and cuts numbers', () => {
    const { svg } = cleanSvg(
      '<svg class="marks" width="10" height="20"><defs><clipPath id="clip0"/></defs><g clip-path="url(#clip0)" class="m" opacity="1"><path d="M1.23456,2"/></g></svg>',
      { id: 'fig', title: 't', description: 'd' },
    );
    expect(svg.toString()).toContain(
      '<clipPath id="fig-clip0"/></defs><g clip-path="url(#fig-clip0)"><path d="M1.23,2"/></g></svg>',
    );
  });

  it.each([
    '<image href="x"/>',
    '<script>1</script>',
    '<g style="x"/>',
    '<g onload="x"/>',
    '<foreignObject/>',
  ])('refuses %s', (inner) => {
    expect(() =>
      cleanSvg(`<svg width="1" height="1">${inner}</svg>`, { id: 'f', title: '', description: '' }),
    ).toThrow(ChartError);
  });
});
