/** Groups rows by a key, keys and rows in order of first appearance. (Map.groupBy needs Node 21.) */
export function groupBy<T, K>(rows: readonly T[], key: (row: T) => K): Map<K, T[]> {
  const groups = new Map<K, T[]>();
  // Most rows come beside others of their group, which is not looked up again.
  let group: T[] | undefined;
  let ofGroup: K | undefined;
  for (const row of rows) {
    const of = key(row);
    if (!group || of !== ofGroup) {
      group = groups.get(of) ?? [];
      if (group.length === 0) groups.set(of, group);
      ofGroup = of;
    }
    group.push(row);
  }
  return groups;
}
