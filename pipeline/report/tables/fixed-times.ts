/** Time and date of an entry: midnight of 1 January 1980, the first that the format knows. */
const [TIME, DATE] = [0, (1 << 5) | 1];

/** Signatures of records of a ZIP archive, and where they hold what is needed. */
const END = { signature: 0x06054b50, length: 22, entries: 10, directory: 16 };
const LISTED = { signature: 0x02014b50, length: 46, time: 12, lengths: [28, 30, 32], local: 42 };
const LOCAL = { signature: 0x04034b50, time: 10 };

/**
 * The archive with times of its entries that are always the same: the same contents, the same bytes. It is changed in place.
 *
 * @param archive a ZIP archive of one part without a comment, under 4 GB
 * @throws Error where it is none
 *
 * Source: PKWARE, APPNOTE 6.3.10, sections 4.3.7 (local headers), 4.3.12 (central directory), 4.3.16 (its end).
 */
export function withFixedTimes(archive: Uint8Array): Uint8Array {
  const view = new DataView(archive.buffer, archive.byteOffset, archive.byteLength);
  const expectAt = (at: number, signature: number): void => {
    if (at < 0 || at + 4 > archive.length || view.getUint32(at, true) !== signature)
      throw new Error(`an archive must have the record ${signature.toString(16)} at ${at}`);
  };
  const setTime = (at: number): void => {
    view.setUint16(at, TIME, true);
    view.setUint16(at + 2, DATE, true);
  };
  const end = archive.length - END.length;
  expectAt(end, END.signature);
  let at = view.getUint32(end + END.directory, true);
  for (let left = view.getUint16(end + END.entries, true); left > 0; left--) {
    expectAt(at, LISTED.signature);
    setTime(at + LISTED.time);
    const local = view.getUint32(at + LISTED.local, true);
    expectAt(local, LOCAL.signature);
    setTime(local + LOCAL.time);
    at += LISTED.lengths.reduce((sum, length) => sum + view.getUint16(at + length, true), LISTED.length);
  }
  return archive;
}
