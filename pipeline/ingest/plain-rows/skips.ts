import { copyText } from '../codecs/value-codec.ts';
import type { SkipTest } from '../read-fields.ts';
import type { CutRow } from './cut-row.ts';
import type { PlainText } from './plain-text.ts';

/** Most cells of a column that are remembered. */
const MOST_CELLS = 4000;

/**
 * Whether a row is one that the source says to skip; undefined where that isn't plain: the cell that says so is blank, and the whole row might be.
 */
export function skipsOf(tests: readonly SkipTest[], text: PlainText): (row: CutRow) => boolean | undefined {
  const known = tests.map(() => new Map<string, boolean>());
  return (row) => {
    for (const [index, { at, skips }] of tests.entries()) {
      const characters = row.text.slice(row.starts[at], row.ends[at]);
      let isSkipped = known[index]!.get(characters);
      if (isSkipped === undefined) {
        isSkipped = skips(row.hasBytes(at) ? text.decode(characters) : characters);
        if (known[index]!.size < MOST_CELLS) known[index]!.set(copyText(characters), isSkipped);
      }
      if (isSkipped) return characters === '' ? undefined : true;
    }
    return false;
  };
}
