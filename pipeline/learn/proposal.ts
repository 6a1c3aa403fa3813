import type { Encoding } from '../ingest/decode-text.ts';
import type { Personal } from '../ingest/personal-columns.ts';
import type { Measure } from '../site/measures.ts';
import type { RecordKind } from '../site/vocabulary.ts';
import type { Guess } from './guess.ts';
import type { Mark } from './guess-numbers.ts';
import type { ProposedWord } from './map-words.ts';
import type { Delimiter } from './read-sample.ts';

/** Where a field is proposed to come from. */
export type ProposedFrom =
  | { headers: readonly string[] }
  | { always: string | undefined; options: readonly string[] }
  | { file_name: string }
  | { sheet_name: string };

/** A field of the record and where it is proposed to come from, with how sure that is and three values. */
export interface ProposedColumn {
  field: string;
  required: boolean;
  from: ProposedFrom;
  match: Pick<Guess<string>, 'confidence' | 'why'>;
  measure: Guess<Measure> | undefined;
  dates: Guess<string> | undefined;
  samples: readonly string[];
}

/** A sheet with a column a day, as `wide` of the site file has it. */
export interface ProposedWide {
  days: Guess<string>;
  month:
    | { always: string | undefined }
    | { file_name: string }
    | { sheet_name: string }
    | { title: true }
    | undefined;
  initials: boolean;
}

/** Files of one make and how they are proposed to be read. */
export interface ProposedSource {
  name: string;
  /** Site of its files, where there are several; undefined: nobody can tell. */
  site?: string | undefined;
  kind: Guess<RecordKind>;
  /** The same files read as the other kinds that they may hold, while the kind is a question. */
  asKind?: ReadonlyMap<RecordKind, ProposedSource> | undefined;
  files: readonly string[];
  /** Files or sheets that it stands for, as found. */
  found: readonly string[];
  workbook: boolean;
  delimiter: Guess<Delimiter> | undefined;
  encoding: Guess<Encoding> | undefined;
  sheet: string | undefined;
  sheets: 'all' | readonly string[] | undefined;
  headerRows: 1 | 2;
  headerRow: number;
  comment: string | undefined;
  decimalMark: Guess<Mark>;
  columns: readonly ProposedColumn[];
  words: Readonly<Record<string, readonly ProposedWord[]>>;
  skip: Readonly<Record<string, readonly string[]>>;
  wide: ProposedWide | undefined;
  /** Columns that are proposed for nothing: they are not kept. */
  unread: readonly { header: string; samples: readonly string[]; personal: Personal | undefined }[];
  /** Names that stand for units. */
  units: readonly string[];
  /** Rows of each of them, as far as looked. */
  unitRows: ReadonlyMap<string, number>;
  rows: number;
  /** Whether there are more rows than were looked at: words that stand there alone are not known yet. */
  cut: boolean;
  /** Language of most of the words that were known. */
  language: string | undefined;
}

/** A unit of one of several sites, by the name that stands in the exports. */
export interface ProposedUnit {
  id: string;
  name: string;
  site: string;
}

/** A name of a unit that no log of cycles has, or that may be a slip of another. */
export interface UnitLink {
  name: string;
  /** Site in whose files it stands, where there are several. */
  site: string | undefined;
  /** Files or sheets in which it stands. */
  found: readonly string[];
  /** Units of the cycles, of which it may be another name. */
  units: readonly string[];
  /** The one that its number speaks for, or from which it is one letter away. */
  near: string | undefined;
  /** Why a name that a log of cycles has is doubted; undefined: no log of cycles has it. */
  doubt: string | undefined;
  /** The unit that it is; its own name where it is a unit of its own; undefined: nobody has said. */
  unit: string | undefined;
}

export const SITE_CHOICES = ['one', 'folder', 'column', 'names'] as const;

/** A way in which the files may be those of several sites, with the sources as they would be then. */
export interface SiteChoice {
  by: Exclude<(typeof SITE_CHOICES)[number], 'one'>;
  text: string;
  sites: readonly string[];
  sources: readonly ProposedSource[];
  units: readonly ProposedUnit[];
}

/** What was learned of a folder: the draft of a site file before it is written. */
export interface Proposal {
  zone: string | undefined;
  /** Ids of the sites; empty: one site, which needs none. */
  sites: readonly string[];
  /** Ways in which it may be several sites: while there are any, which it is is a question. */
  siteChoices: readonly SiteChoice[];
  /** Units that must be declared: where there are several sites. */
  units: readonly ProposedUnit[];
  /** Names of units that must be tied to one, or be said to be units of their own. */
  unitLinks: readonly UnitLink[];
  sources: readonly ProposedSource[];
  /** Files of which nothing is proposed, and why. */
  left: readonly { file: string; why: string }[];
}

/** A name as the site file allows it for an id: letters, digits, blank, . _ or -. */
export const idOf = (name: string): string =>
  name
    .replace(/[^\p{L}\p{N} ._-]+/gu, ' ')
    .replace(/\s+/g, ' ')
    .replace(/^[^\p{L}\p{N}]+/u, '')
    .trim()
    .slice(0, 60) || 'unit';
