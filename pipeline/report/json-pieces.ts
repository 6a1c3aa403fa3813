/** Levels of objects whose members are pieces of their own. */
const LEVELS = 2;

/** A value as JSON, in pieces, since a text has an end: half a billion characters. Down to its lists indented as by `JSON.stringify(value, null, 2)`, and each row of them on one line. */
export function* jsonPieces(value: object, level = 0): Generator<string> {
  const indent = '  '.repeat(level);
  const isList = Array.isArray(value);
  const members = isList
    ? value.map((member): [string, unknown] => ['', member ?? null])
    : Object.entries(value)
        .filter(([, member]) => member !== undefined)
        .map(([name, member]): [string, unknown] => [`${JSON.stringify(name)}: `, member]);
  const [open, close] = isList ? '[]' : '{}';
  if (members.length === 0) {
    yield `${open}${close}`;
    return;
  }
  for (const [index, [name, member]] of members.entries()) {
    yield `${index === 0 ? open : ','}\n${indent}  ${name}`;
    const isInside = !isList && level < LEVELS && typeof member === 'object' && member !== null;
    if (isInside) yield* jsonPieces(member, level + 1);
    else yield JSON.stringify(member);
  }
  yield `\n${indent}${close}`;
}
