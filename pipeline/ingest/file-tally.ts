import type { Cell, Fault } from './cell.ts';
import { cellText } from './cell.ts';
import { copyText } from './codecs/value-codec.ts';
import { type FileRead, MOST_ALIKE, type Problem } from './reading.ts';

/** What one source makes of one file: the counts as they grow, and the problems. */
export class FileTally {
  readonly read: FileRead;
  readonly #problems: Problem[];
  /** Of problems alike: how many are listed, and the last of them. */
  readonly #alike = new Map<string, { listed: number; last: Problem }>();

  /** A tally that goes on from counts of before, with problems of its own. */
  static goOn(read: FileRead, problems: Problem[]): FileTally {
    const tally = new FileTally(read, problems);
    Object.assign(tally.read, read);
    return tally;
  }

  constructor(place: Pick<FileRead, 'source' | 'kind' | 'file'>, problems: Problem[]) {
    const { source, kind, file } = place;
    this.#problems = problems;
    this.read = {
      source,
      kind,
      file,
      sheet: null,
      bytes: 0,
      sha256: '',
      rows: 0,
      records: 0,
      duplicates: 0,
      rejected: 0,
      skipped: 0,
      preamble: 0,
      cells_lost: 0,
    };
  }

  /** A fault that costs the file, or (cost "cell") one of its columns. */
  fileProblem(
    costs: 'file' | 'cell',
    fault: Fault,
    place: { row?: number; column?: string; value?: string | undefined } = {},
  ): void {
    this.#add(costs, fault, place.row ?? null, place.column ?? null, place.value ?? null);
  }

  reject(row: number, fault: Fault, column: string | null, value: Cell | null): void {
    this.read.rejected++;
    this.#add('row', fault, row, column, value === null ? null : cellText(value));
  }

  loseCell(row: number, fault: Fault, column: string | null, value: Cell | null): void {
    this.read.cells_lost++;
    this.#add('cell', fault, row, column, value === null ? null : cellText(value));
  }

  /** @throws Error where the counts don't add up, which is a bug */
  check(): void {
    const { rows, records, duplicates, rejected, skipped, file, source } = this.read;
    if (rows !== records + duplicates + rejected + skipped) {
      throw new Error(
        `${source}, ${file}: ${rows} rows are not ${records} records + ${duplicates} duplicates + ${rejected} rejected + ${skipped} skipped`,
      );
    }
  }

  #add(
    costs: Problem['costs'],
    fault: Fault,
    row: number | null,
    column: string | null,
    value: string | null,
  ): void {
    const { source, file, sheet } = this.read;
    const key = `${fault.code}\u0000${costs}\u0000${column}`;
    const alike = this.#alike.get(key);
    if (alike && alike.listed >= MOST_ALIKE) {
      alike.last.more = (alike.last.more ?? 0) + 1;
      return;
    }
    const problem: Problem = {
      code: fault.code,
      costs,
      source,
      file,
      sheet,
      row,
      column,
      value: value === null ? null : cut(value),
      expected: fault.expected,
    };
    this.#problems.push(problem);
    this.#alike.set(key, { listed: (alike?.listed ?? 0) + 1, last: problem });
  }
}

/** At most 120 characters, and no half of a surrogate pair at the end. */
function cut(value: string): string {
  const short = value.length <= 120 ? value : `${value.slice(0, 119).replace(/[\ud800-\udbff]$/, '')}…`;
  return copyText(short);
}
