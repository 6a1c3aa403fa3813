import { readFileSync } from 'node:fs';

/** The modules of the page's script, each after those that it imports. */
const MODULES = ['words', 'marks', 'tip', 'units', 'zoom', 'newest', 'reader', 'pointer', 'finder', 'main'];

/** The one script of every page: its modules joined, without comments and indents. The same text on each page, so one hash lets it run. */
export const pageScript = joinModules(
  MODULES.map((name) => readFileSync(new URL(`./browser/${name}.js`, import.meta.url), 'utf8')),
);

/**
 * Modules of the browser as one script: imports and the word `export` go, as all names stand in one function then, and no name may stand twice.
 *
 * @param sources texts of the modules, each after those that it imports; statements of import and export begin their line
 * @throws Error where a name stands in two modules, or the text could end its element
 */
export function joinModules(sources: readonly string[]): string {
  const names = new Set<string>();
  const bodies = sources.map((source) => {
    const text = source.replaceAll('\r\n', '\n');
    for (const [, name] of text.matchAll(/^(?:export )?(?:const|let|function) (\w+)/gm)) {
      if (names.has(name!))
        throw new Error(`the name ${name} must stand in one module of the page's script only`);
      names.add(name!);
    }
    return text
      .replace(/^import [^;]*;\n/gm, '')
      .replace(/^export /gm, '')
      .replace(/\/\*\*[\s\S]*?\*\/[ \t]*\n?/g, '')
      .replace(/^\s*\/\/.*\n/gm, '')
      .replace(/^\s+/gm, '');
  });
  const script = `(() => {\n'use strict';\n${bodies.join('')}})();\n`;
  if (/<\/script|<!--/i.test(script))
    throw new Error('the page script must not hold text that ends its element');
  return script;
}
