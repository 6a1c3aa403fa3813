import { execFileSync } from 'node:child_process';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { Script } from 'node:vm';
import { describe, expect, it } from 'vitest';
import { joinModules, pageScript } from '../../../pipeline/report/script/page-script.ts';

describe('the page script', () => {
  it('parses as one script, makes no code from text, and is light', () => {
    expect(() => new Script(pageScript)).not.toThrow();
    expect(pageScript).not.toMatch(
      /\beval\b|new Function|innerHTML|outerHTML|insertAdjacentHTML|document\.write|fetch\(|import\(/,
    );
    expect(pageScript.length).toBeLessThan(24_000);
  });

  it('holds to its types, which the browser’s library checks', () => {
    const tsc = join(dirname(createRequire(import.meta.url).resolve('typescript/package.json')), 'bin/tsc');
    const folder = new URL('../../../pipeline/report/script/browser', import.meta.url).pathname;
    expect(execFileSync(process.execPath, [tsc, '-p', folder], { encoding: 'utf8' })).toBe('');
  });
});

describe('joinModules', () => {
  it('takes imports, exports, comments and indents out', () => {
    expect(
      joinModules([
        '/** What it is. */\nexport function one() {\n  // why\n  return 1;\n}\n',
        "import {\n  one,\n} from './one.js';\n\nconst two = /** @type {number} */ (one()) + 1;\n",
      ]),
    ).toBe("(() => {\n'use strict';\nfunction one() {\nreturn 1;\n}\nconst two = (one()) + 1;\n})();\n");
  });

  it('refuses a name that stands in two modules, and text that would end the element', () => {
    expect(() => joinModules(['const a = 1;\n', 'export const a = 2;\n'])).toThrow(/the name a /);
    expect(() => joinModules(["const a = '</script>';\n"])).toThrow(/ends its element/);
  });
});
