import { createHmac } from 'node:crypto';
import { MEASURES_OF, type Measure, measureAmiss } from '../../site/measures.ts';
import type { recordFields } from '../../site/records.ts';
import { UserError } from '../../user-error.ts';
import { type Cell, cellText, Fault, WallDate } from '../cell.ts';
import { rounded, toCelsius, toKilopascal, toKilopascalPerMinute } from './conversions.ts';
import { decimalReader } from './decimal.ts';
import { durationReader } from './duration.ts';
import { closedWords, yesNoWords } from './words.ts';

/** Reads a cell that is not blank as what the field holds, or says what is wrong with it. */
export interface ValueCodec {
  (cell: Cell): string | number | boolean | Fault;
  /** Codecs of numbers: reads a stretch of a text, without a blank at either end, in the same way. */
  stretch?: (text: string, from: number, to: number) => number | Fault;
}

export type RecordField = ReturnType<typeof recordFields>[number];

export interface CodecSettings {
  measure: Measure | undefined;
  decimalMark: '.' | ',';
  mapping: Readonly<Record<string, string | readonly string[]>>;
  barometricKpa: number;
  /** Key of the hash of names; undefined where the site has none. */
  personKey: Uint8Array | undefined;
  /** Source and field, for messages about the site file. */
  place: string;
}

/**
 * Codec of a field that holds no instant, by what it holds; the measure where none is declared is the first of its family, which is that of the record.
 * Whether the value is possible is for the record's schema to say.
 *
 * @throws UserError `measure` where the measure is of another family; `mapped_word` where the mapping of words contradicts itself
 */
export function valueCodec(field: RecordField, settings: CodecSettings): ValueCodec {
  const { holds } = field.meta;
  const amiss = settings.measure && measureAmiss(holds, settings.measure);
  if (amiss) throw new UserError('measure', `${settings.place}: measure ${amiss}`);
  const measure = settings.measure ?? MEASURES_OF[holds]?.[0] ?? 's';
  switch (holds) {
    case 'word': {
      const { options } = field.schema as unknown as { options: readonly string[] };
      const read = closedWords(options, settings.mapping, settings.place);
      return orFault(
        (text) => read(text),
        new Fault('unknown_word', `one of ${options.join(', ')}, or a word mapped onto one`),
      );
    }
    case 'yes_no': {
      const read = yesNoWords(settings.mapping, settings.place);
      const fault = new Fault('unknown_word', 'yes or no, or a word mapped onto one');
      return (cell) => (typeof cell === 'boolean' ? cell : (read(cellText(cell)) ?? fault));
    }
    case 'person':
      return personCodec(settings);
    case 'integer':
      return integerCodec(settings.decimalMark);
    case 'number':
      return numberCodec(settings.decimalMark, (value) => value);
    case 'temperature':
      return numberCodec(settings.decimalMark, toCelsius(measure));
    case 'pressure':
      return numberCodec(settings.decimalMark, toKilopascal(measure, settings.barometricKpa));
    case 'leak_rate':
      return numberCodec(settings.decimalMark, toKilopascalPerMinute(measure));
    case 'duration':
      return durationCodec(measure, settings.decimalMark);
    default:
      return textCodec;
  }
}

function orFault<Value extends string | number>(
  read: (text: string) => Value | undefined,
  fault: Fault,
): ValueCodec {
  return (cell) => read(cellText(cell)) ?? fault;
}

/** Text as it stands, in composed form. It is copied, since a slice would keep the whole piece of the file alive. */
const textCodec: ValueCodec = (cell) => copyText(cellText(cell).normalize('NFC'));

export function copyText(text: string): string {
  return text.length < 13 ? text : Buffer.from(text, 'utf16le').toString('utf16le');
}

/** Fewest bytes of the key of the hash of names. */
export const LEAST_KEY_BYTES = 16;

/**
 * A name as the first 16 hexadecimal digits of HMAC-SHA-256 under the site's key: the same person gives the same text, and nobody without the key can try names.
 * Letter case, blanks and full stops aside, so that "A. Smith" and "a smith" are one.
 */
function personCodec({ personKey, place }: CodecSettings): ValueCodec {
  if (personKey === undefined)
    throw new UserError(
      'person_key',
      `${place}: must have a key for the hash of names: set people.key_file in the site file`,
    );
  return (cell) => {
    const name = cellText(cell)
      .normalize('NFC')
      .toLowerCase()
      .replace(/[.\s]+/g, ' ')
      .trim();
    return createHmac('sha256', personKey).update(name).digest('hex').slice(0, 16);
  };
}

function numberFault(mark: '.' | ','): Fault {
  return new Fault('bad_number', `a number with the decimal mark "${mark}" and no ambiguous separator`);
}

/** A codec of numbers, by how it reads a stretch of a text without a blank at either end, and cells that are no text. */
function codecOfNumbers(
  stretch: (text: string, from: number, to: number) => number | Fault,
  ofOther: (cell: Exclude<Cell, string>) => number | Fault,
): ValueCodec {
  const codec: ValueCodec = (cell) => {
    if (typeof cell !== 'string') return ofOther(cell);
    const text = cell.trim();
    return stretch(text, 0, text.length);
  };
  codec.stretch = stretch;
  return codec;
}

function numberCodec(mark: '.' | ',', convert: (value: number) => number | undefined): ValueCodec {
  const read = decimalReader(mark);
  const bad = numberFault(mark);
  const impossible = new Fault('out_of_range', 'a reading of vacuum that is not negative');
  const converted = (value: number | undefined): number | Fault =>
    value === undefined || !Number.isFinite(value) ? bad : (convert(value) ?? impossible);
  return codecOfNumbers(
    (text, from, to) => converted(read(text, from, to)),
    (cell) => converted(typeof cell === 'number' ? cell : undefined),
  );
}

function integerCodec(mark: '.' | ','): ValueCodec {
  const read = decimalReader(mark);
  const bad = new Fault('bad_number', 'a whole number');
  const whole = (value: unknown): number | Fault => (Number.isSafeInteger(value) ? (value as number) : bad);
  return codecOfNumbers((text, from, to) => whole(read(text, from, to)), whole);
}

/** Times of day in a workbook count from this date, ms as if UTC; in workbooks with the 1904 date system from the other. */
const WORKBOOK_ZERO = Date.UTC(1899, 11, 30);
const WORKBOOK_ZERO_1904 = Date.UTC(1904, 0, 1);

/** The time of day, or length of time, of a date cell that shows no date, ms. */
export function timeOfDay({ wallMs }: WallDate): number {
  return wallMs - (wallMs < WORKBOOK_ZERO_1904 ? WORKBOOK_ZERO : WORKBOOK_ZERO_1904);
}

function durationCodec(measure: Measure, mark: '.' | ','): ValueCodec {
  const read = durationReader(measure, decimalReader(mark));
  const bad = new Fault('bad_number', `a length of time in ${measure}`);
  const clockLike = measure === 'mm:ss' || measure === 'hh:mm:ss';
  return codecOfNumbers(
    (text, from, to) => read(text, from, to) ?? bad,
    (cell) => {
      if (cell instanceof WallDate && clockLike) return timeOfDay(cell) / 1000;
      return typeof cell === 'number' && !clockLike ? rounded(cell * (measure === 'min' ? 60 : 1)) : bad;
    },
  );
}
