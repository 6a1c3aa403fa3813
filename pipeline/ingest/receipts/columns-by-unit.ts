import type { Column, FileColumns } from '../file-columns.ts';

/**
 * The columns of a file cut to its units, so that the records of one can be let go while those of others are held, and those of units that nobody wants never are. Rows of a unit keep their order.
 *
 * @param wanted units that are asked for
 */
export function columnsByUnit(of: FileColumns, wanted: readonly string[]): Map<string, FileColumns> {
  const unit = of.columns.find(([name]) => name === 'unit')?.[1];
  if (unit?.type !== 'words') return new Map();
  // Most exports are of one unit.
  if (unit.words.length === 1) return new Map([[unit.words[0]!, of]]);
  const places = placesByCode(unit.codes, unit.words.length);
  const choices = new Map(of.choices);
  return new Map(
    wanted.flatMap((name): [string, FileColumns][] => {
      const own = places[unit.words.indexOf(name)];
      if (!own) return [];
      return [
        [
          name,
          {
            ...of,
            count: own.length,
            rows: Float64Array.from(own, (at) => of.rows[at]!),
            columns: of.columns.map(([field, column]): [string, Column] => [field, columnAt(column, own)]),
            choices: [...own].flatMap((at, index) => {
              const choice = choices.get(at);
              return choice ? [[index, choice]] : [];
            }),
          },
        ],
      ];
    }),
  );
}

/** Where each code stands, in order. */
function placesByCode(codes: Int32Array, count: number): Int32Array[] {
  const sizes = new Int32Array(count);
  for (const code of codes) if (code >= 0) sizes[code]!++;
  const places = Array.from(sizes, (size) => new Int32Array(size));
  const next = new Int32Array(count);
  for (let at = 0; at < codes.length; at++) {
    const code = codes[at]!;
    if (code >= 0) places[code]![next[code]!++] = at;
  }
  return places;
}

function columnAt(column: Column, places: Int32Array): Column {
  if (column.type === 'words') {
    const codes = new Int32Array(places.length);
    for (let at = 0; at < places.length; at++) codes[at] = column.codes[places[at]!]!;
    return { ...column, codes };
  }
  const values = column.type === 'number' ? new Float64Array(places.length) : new Int8Array(places.length);
  for (let at = 0; at < places.length; at++) values[at] = column.values[places[at]!]!;
  return { type: column.type, values } as Column;
}
