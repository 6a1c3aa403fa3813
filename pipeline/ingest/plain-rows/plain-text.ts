/** Text of a file in which rows may be taken as they stand, without being cut into texts of cells first. */
export interface PlainText {
  /** One character. */
  delimiter: string;
  /** Text in the file's encoding, from the same bytes as ISO 8859-1. */
  decode(latin1: string): string;
  isSuspect(text: string): boolean;
  /** Says who takes plain rows from here on. */
  use(rows: PlainRows): void;
}

/** Takes rows that are plain: of the header's width, each cell whole on its line, and nothing amiss. */
export interface PlainRows {
  /**
   * Takes the row that stands in a stretch of a text as a record, or counts it as skipped; false where it isn't plain: then nothing is taken or counted.
   *
   * @param text of whole lines, each byte as one character (ISO 8859-1)
   * @param isAscii whether all of the text is ASCII
   * @param row number of the line
   */
  take(text: string, from: number, to: number, isAscii: boolean, row: number): boolean;
}
