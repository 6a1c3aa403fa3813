/** Months "2026-03" from the first to the last, both included; none where the first lies after the last. */
export function monthsFromTo(first: string, last: string): string[] {
  const list: string[] = [];
  for (let month = first; month <= last; month = nextMonth(month)) list.push(month);
  return list;
}

function nextMonth(month: string): string {
  const [year, number] = month.split('-').map(Number) as [number, number];
  return number === 12 ? `${year + 1}-01` : `${year}-${String(number + 1).padStart(2, '0')}`;
}
