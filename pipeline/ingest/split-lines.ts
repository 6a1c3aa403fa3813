/** The beginning of a line that is longer than the limit; the rest was let go. */
export class LongLine {
  readonly beginning: string;

  constructor(beginning: string) {
    this.beginning = beginning;
  }
}

export type Line = string | LongLine;

/** Longest line, and longest row of several lines, in characters. A longer one is a problem that costs the row; reading goes on after it. */
export const MAX_ROW_LENGTH = 1_000_000;

/**
 * Cuts text into lines, piece by piece, holding no more than one piece and one line of at most `MAX_ROW_LENGTH` characters. Lines end with LF or CRLF;
 * with CR alone where the first line end of the text is a CR alone.
 */
export class LineSplitter {
  #rest = '';
  #long: LongLine | undefined;
  #end: '\n' | '\r' | undefined;
  /** Whether the text so far ends with a line end. */
  terminated = true;

  /** Whether all text so far ends with a line end, and lines end with LF: then the next line may be read elsewhere. */
  get isBetweenLines(): boolean {
    return this.#end === '\n' && this.#rest === '' && this.#long === undefined;
  }

  push(text: string): Line[] {
    if (text === '') return [];
    const whole = this.#rest + text;
    this.#end ??= lineEnd(whole);
    if (this.#end === undefined) {
      this.#keep(whole);
      return [];
    }
    const lines: Line[] = whole.split(this.#end);
    const rest = lines.pop() as string;
    for (let index = 0; index < lines.length; index++) {
      const line = lines[index] as string;
      if (this.#long && index === 0) {
        lines[0] = this.#long;
        this.#long = undefined;
      } else if (line.length > MAX_ROW_LENGTH) lines[index] = new LongLine(line.slice(0, 200));
      else if (this.#end === '\n' && line.endsWith('\r')) lines[index] = line.slice(0, -1);
    }
    this.#rest = '';
    this.#keep(rest);
    return lines;
  }

  /** What stands after the last line end. */
  end(): Line[] {
    const line: Line = this.#long ?? this.#rest;
    if (line === '' || line === '\r') return [];
    this.terminated = typeof line === 'string' && line.endsWith('\r');
    return [typeof line === 'string' && line.endsWith('\r') ? line.slice(0, -1) : line];
  }

  #keep(rest: string): void {
    if (this.#long) this.#rest = '';
    else if (rest.length > MAX_ROW_LENGTH) {
      this.#long = new LongLine(rest.slice(0, 200));
      this.#rest = '';
    } else this.#rest = rest;
  }
}

/** The first line end; undefined while a CR at the very end may still be the first half of CRLF. */
function lineEnd(text: string): '\n' | '\r' | undefined {
  const at = text.search(/[\r\n]/);
  if (at < 0) return undefined;
  if (text[at] === '\n') return '\n';
  if (at === text.length - 1) return undefined;
  return text[at + 1] === '\n' ? '\n' : '\r';
}
