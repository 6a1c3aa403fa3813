/**
 * The rows of each unit, from a list in which they stand together. Only their places are held: lists of the rows by unit would take eight bytes a row again.
 *
 * @returns the rows of a unit in their order, none for a unit that has none; made anew each time
 * @throws Error where rows of a unit stand in two places
 */
export function rowsOfUnits<Row extends { unit: string }>(rows: readonly Row[]): (unit: string) => Row[] {
  const places = new Map<string, { from: number; to: number }>();
  for (let from = 0; from < rows.length; ) {
    const { unit } = rows[from]!;
    if (places.has(unit)) throw new Error(`rows of ${unit} must stand together, found more at ${from}`);
    let to = from + 1;
    while (to < rows.length && rows[to]!.unit === unit) to++;
    places.set(unit, { from, to });
    from = to;
  }
  return (unit) => {
    const place = places.get(unit);
    return place ? rows.slice(place.from, place.to) : [];
  };
}
