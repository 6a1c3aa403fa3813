import type { TopLevelSpec } from 'vega-lite';
import type { Field, PositionFieldDef } from 'vega-lite/types_unstable/channeldef.js';

/** What stands on an axis. */
export type Position = PositionFieldDef<Field>;

/** A layer of a layered chart. */
export type Layer = Extract<TopLevelSpec, { layer: unknown }>['layer'][number];
/** The scale domain and ticks that charts which are compared must share. */
export interface SharedScale {
  max: number;
}

/** Scale from zero that holds all values of the rows, the same for each chart that is compared with the others. */
export function scaleFromZero<Row>(
  rows: readonly Row[],
  values: (row: Row) => (number | null)[],
): SharedScale {
  const max = Math.max(0, ...rows.flatMap(values).filter((value) => value !== null));
  return { max: max === 0 ? 1 : max };
}
