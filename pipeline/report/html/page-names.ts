/**
 * A name for each id that is safe as a file name and as a fragment: letters, digits, dot, underscore and hyphen; unique where letter case is
 * ignored, as some file systems do. Same ids in the same order, same names.
 */
export function safeNames(ids: readonly string[]): Map<string, string> {
  const taken = new Set<string>();
  const names = new Map<string, string>();
  for (const id of ids) {
    if (names.has(id)) continue;
    const stem = safeName(id);
    let name = stem;
    for (let next = 2; taken.has(name.toLowerCase()); next++) name = `${stem}-${next}`;
    taken.add(name.toLowerCase());
    names.set(id, name);
  }
  return names;
}

function safeName(id: string): string {
  const plain = id
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .replace(/[^A-Za-z0-9._-]+/g, '-')
    .replace(/^[-.]+|[-.]+$/g, '')
    .slice(0, 60);
  return plain === '' ? 'x' : plain;
}

/** File name of each unit's page. */
export function unitPageNames(units: readonly string[]): Map<string, string> {
  return new Map([...safeNames(units)].map(([unit, name]) => [unit, `unit-${name}.html`]));
}
