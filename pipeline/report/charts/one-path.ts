import type { Layer, Position } from './layer.ts';
import { toldChannel, toldListText, toldMark } from './told.ts';

/** Where the marks stand, and in which colour. `y` must be the field "value" and `x` the field "day". */
interface Look {
  x: Position;
  y: Position;
  color: string;
  opacity: number;
}

/**
 * Dots of one look as a single path, whose words stand together in the order of the dots: a fifth of the bytes, and of the time, of a mark for each. The page's script tells them apart.
 *
 * @param rows in order of day
 */
export function dots(
  rows: readonly { day: number; value: number; tip: string }[],
  unit: string,
  { x, y, color, opacity }: Look,
): Layer {
  const told = toldListText(
    unit,
    rows.map(({ tip }) => tip),
  );
  // A line that breaks after each of its points is a row of dots as wide as the line.
  const values = rows.flatMap(({ day, value }, index) => [
    { day, value, told: index === 0 ? told : '' },
    { day, value: null, told: '' },
  ]);
  return {
    data: { values },
    mark: { ...toldMark, type: 'line', strokeCap: 'round', strokeWidth: DOT, color, opacity },
    encoding: { ...toldChannel, x, y },
  };
}

/** Width of a dot, px. */
const DOT = 3;

/** Upright strokes from a low to a high value as a single path, without words. */
export function strokes(
  rows: readonly { day: number; low: number; high: number }[],
  { x, y, color, opacity }: Look,
): Layer {
  return {
    data: {
      values: rows.flatMap(({ day, low, high }) => [low, high, null].map((value) => ({ day, value }))),
    },
    mark: { type: 'line', strokeWidth: 1, color, opacity },
    encoding: { x, y },
  };
}
