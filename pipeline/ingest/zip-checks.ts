import { crc32 } from 'node:zlib';

const END = 0x06054b50;
const END_64 = 0x06064b50;
const ENTRY = 0x02014b50;

/**
 * The check sums (CRC-32) that a ZIP archive declares for its files, in the order of its directory; undefined where the directory can't be followed.
 * The unpacking library does not compare them. Source of the layout: PKWARE APPNOTE 6.3, 4.3.12 (central directory), 4.3.16 (end record), 4.3.14 (ZIP64).
 */
export function declaredChecks(bytes: Uint8Array): number[] | undefined {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const within = (at: number, length: number): boolean => at >= 0 && at + length <= view.byteLength;
  let end = view.byteLength - 22;
  const least = Math.max(0, view.byteLength - 65_558);
  while (end >= least && view.getUint32(end, true) !== END) end--;
  if (end < least) return undefined;
  let count = view.getUint16(end + 8, true);
  let at = view.getUint32(end + 16, true);
  if ((count === 0xffff || at === 0xffffffff) && within(end - 12, 4)) {
    const large = view.getUint32(end - 12, true);
    if (within(large, 56) && view.getUint32(large, true) === END_64) {
      count = view.getUint32(large + 32, true);
      at = view.getUint32(large + 48, true);
    }
  }
  const checks: number[] = [];
  for (let entry = 0; entry < count; entry++) {
    if (!within(at, 46) || view.getUint32(at, true) !== ENTRY) return undefined;
    checks.push(view.getUint32(at + 16, true));
    at += 46 + view.getUint16(at + 28, true) + view.getUint16(at + 30, true) + view.getUint16(at + 32, true);
  }
  return checks;
}

/** Whether unpacked bytes are those that the archive declares. */
export const isWhole = (unpacked: Uint8Array, declared: number | undefined): boolean =>
  declared !== undefined && crc32(unpacked) === declared;
