/** Levels of objects whose members are pieces of their own. */
const LEVELS = 2;

/** What stands between the parts of a piece. */
interface Layout {
  colon: string;
  /** Before a member, or a closing bracket, of so many levels in. */
  newLine(level: number): string;
  /** A member that is one piece, so many levels in. */
  member(value: unknown, level: number): string;
}

const onOneLine = (value: unknown): string => JSON.stringify(value);
const newLine = (level: number): string => `\n${'  '.repeat(level)}`;
const INDENTED: Layout = { colon: ': ', newLine, member: onOneLine };
const ON_ONE_LINE: Layout = { colon: ':', newLine: () => '', member: onOneLine };
const INDENTED_THROUGHOUT: Layout = {
  colon: ': ',
  newLine,
  // Texts of JSON hold no line breaks of their own.
  member: (value, level) => JSON.stringify(value, null, 2).replaceAll('\n', newLine(level)),
};

/** A value as JSON, in pieces, since a text has an end: half a billion characters. Down to its lists indented as by `JSON.stringify(value, null, 2)`, and each row of them on one line. */
export const jsonPieces = (value: object): Generator<string> => piecesOf(value, INDENTED, 0);

/** The same as by `JSON.stringify(value, null, 2)`. */
export const jsonIndentedPieces = (value: object): Generator<string> =>
  piecesOf(value, INDENTED_THROUGHOUT, 0);

/** The same as by `JSON.stringify(value)`. */
export const jsonLinePieces = (value: object): Generator<string> => piecesOf(value, ON_ONE_LINE, 0);

function* piecesOf(value: object, layout: Layout, level: number): Generator<string> {
  const { colon, newLine } = layout;
  const isList = Array.isArray(value);
  const members = isList
    ? value.map((member): [string, unknown] => ['', member ?? null])
    : Object.entries(value)
        .filter(([, member]) => member !== undefined)
        .map(([name, member]): [string, unknown] => [`${JSON.stringify(name)}${colon}`, member]);
  const [open, close] = isList ? '[]' : '{}';
  if (members.length === 0) {
    yield `${open}${close}`;
    return;
  }
  for (const [index, [name, member]] of members.entries()) {
    yield `${index === 0 ? open : ','}${newLine(level + 1)}${name}`;
    const isInside = !isList && level < LEVELS && typeof member === 'object' && member !== null;
    if (isInside) yield* piecesOf(member, layout, level + 1);
    else yield layout.member(member, level + 1);
  }
  yield `${newLine(level)}${close}`;
}
