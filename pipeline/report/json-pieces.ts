/** Levels whose members are pieces of their own. */
const LEVELS = 2;

/**
 * What `JSON.stringify(value, null, 2)` gives, in pieces, since a text has an end: half a billion characters. Lists of numbers far inside stand on one line each: with a line for each
 * number the series of a thousand units take three times the room.
 */
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
    if (level < LEVELS && typeof member === 'object' && member !== null) yield* jsonPieces(member, level + 1);
    else yield inLines(JSON.stringify(member, null, 2)).replaceAll('\n', `\n${indent}  `);
  }
  yield `\n${indent}${close}`;
}

/** A list that holds no text, list or object. No text of JSON holds a line end as such. */
const PLAIN_LIST = /\[\n([^[\]{}"]*)\]/g;

const inLines = (json: string): string =>
  json.replace(PLAIN_LIST, (_, inner: string) => `[${inner.trim().replace(/\n\s*/g, ' ')}]`);
