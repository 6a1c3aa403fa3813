/** A file of the report: its path below the report's folder, with forward slashes. A large text comes in pieces, made when they are written. */
export interface ReportFile {
  path: string;
  content: string | Uint8Array | TextPieces;
}

export interface TextPieces {
  [Symbol.iterator](): Iterator<string>;
}

export const inPieces = (pieces: () => Iterator<string>): TextPieces => ({ [Symbol.iterator]: pieces });
