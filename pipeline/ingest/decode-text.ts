import type { Source } from '../site/site-schema.ts';

export type Encoding = NonNullable<Source['encoding']>;

/** Turns the bytes of a file into text, piece by piece. */
export interface TextDecoding {
  encoding: Encoding;
  decode(bytes: Uint8Array): string;
  end(): string;
  /** Text from bytes that stand as characters (ISO 8859-1), without a change to the pieces; undefined where line ends and delimiters may be more than a byte. */
  decodeCharacters: ((latin1: string) => string) | undefined;
  /** Whether a text holds a character that stands for bytes which the encoding doesn't know. */
  isSuspect(text: string): boolean;
}

const MARKS: readonly [Encoding, readonly number[]][] = [
  ['utf-8', [0xef, 0xbb, 0xbf]],
  ['utf-16le', [0xff, 0xfe]],
  ['utf-16be', [0xfe, 0xff]],
];

/**
 * The decoding of a file: by its byte order mark, else as declared, else UTF-8. The mark itself is not part of the text. Bytes that the encoding doesn't
 * know become U+FFFD (in Windows-1252: the five unassigned C1 characters); nothing is dropped.
 *
 * @param head the first bytes of the file, at least three where the file has as many
 */
export function textDecoding(head: Uint8Array, declared: Encoding | undefined): TextDecoding {
  const marked = MARKS.find(([, mark]) => mark.every((byte, index) => head[index] === byte))?.[0];
  const encoding = marked ?? declared ?? 'utf-8';
  return encoding === 'windows-1252' ? windows1252() : unicode(encoding);
}

function unicode(encoding: Encoding): TextDecoding {
  const decoder = new TextDecoder(encoding);
  return {
    encoding,
    decode: (bytes) => decoder.decode(bytes, { stream: true }),
    end: () => decoder.decode(),
    decodeCharacters:
      encoding === 'utf-8' ? (latin1) => Buffer.from(latin1, 'latin1').toString('utf8') : undefined,
    isSuspect: (text) => text.includes('\uFFFD'),
  };
}

/**
 * Characters of the bytes 0x80 to 0x9F in Windows-1252. Own table because TextDecoder of Node 20 reads "windows-1252" as ISO 8859-1.
 * Source: WHATWG Encoding Standard, index windows-1252.
 */
const C1 =
  '\u20AC\u0081\u201A\u0192\u201E\u2026\u2020\u2021\u02C6\u2030\u0160\u2039\u0152\u008D\u017D\u008F' +
  '\u0090\u2018\u2019\u201C\u201D\u2022\u2013\u2014\u02DC\u2122\u0161\u203A\u0153\u009D\u017E\u0178';

function windows1252(): TextDecoding {
  const decodeCharacters = (latin1: string): string =>
    latin1.replace(/[\u0080-\u009f]/g, (character) => C1[character.charCodeAt(0) - 0x80]!);
  return {
    encoding: 'windows-1252',
    decode: (bytes) =>
      decodeCharacters(Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength).toString('latin1')),
    end: () => '',
    decodeCharacters,
    isSuspect: (text) => /[\u0081\u008d\u008f\u0090\u009d]/.test(text),
  };
}
