import { zipSync } from 'fflate';
import { describe, expect, it } from 'vitest';
import { withFixedTimes } from '../../../pipeline/report/tables/fixed-times.ts';

const FILES = { 'a.txt': new Uint8Array([1, 2, 3]), 'folder/ä.xml': new Uint8Array(5000).fill(65) };

describe('the times of an archive', () => {
  it('are those of an archive that fflate made on the first day of 1980', () => {
    const made = (mtime: Date) => zipSync(FILES, { mtime, extra: { 1: new Uint8Array([7, 7]) } });
    const first = made(new Date(1980, 0, 1));
    const later = made(new Date(2026, 5, 30, 17, 12, 44));
    expect(Buffer.compare(first, later)).not.toBe(0);
    expect(Buffer.compare(withFixedTimes(later), first)).toBe(0);
  });

  it('can be set where the archive lies within a larger buffer', () => {
    const later = zipSync(FILES, { mtime: new Date(2026, 5, 30) });
    const whole = new Uint8Array(later.length + 20).fill(9);
    whole.set(later, 10);
    withFixedTimes(whole.subarray(10, 10 + later.length));
    expect(Buffer.from(whole.subarray(10, 10 + later.length))).toEqual(
      Buffer.from(zipSync(FILES, { mtime: new Date(1980, 0, 1) })),
    );
    expect([whole[9], whole[10 + later.length]]).toEqual([9, 9]);
  });

  it('are not looked for in what is no archive', () => {
    expect(() => withFixedTimes(new Uint8Array(100))).toThrow('must have the record 6054b50');
    expect(() => withFixedTimes(new Uint8Array(3))).toThrow('must have the record');
  });
});
