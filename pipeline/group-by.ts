/** Groups rows by a key, keys and rows in order of first appearance. (Map.groupBy needs Node 21.) */
export function groupBy<T, K>(rows: readonly T[], key: (row: T) => K): Map<K, T[]> {
  const groups = new Map<K, T[]>();
  for (const row of rows) {
    const of = key(row);
    const group = groups.get(of);
    if (group) group.push(row);
    else groups.set(of, [row]);
  }
  return groups;
}
