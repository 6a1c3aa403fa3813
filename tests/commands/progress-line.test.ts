import { describe, expect, it } from 'vitest';
import { progressLine } from '../../pipeline/commands/progress-line.ts';

const at = (bytes: number, all: number | undefined, seconds: number): string =>
  progressLine({ source: 'cycles', file: 'log.csv', bytes, all }, seconds);

describe('the line of progress', () => {
  it('says how much is read of all, at what rate, and what is left', () => {
    expect(at(12_300_000, 48_000_000, 1)).toBe('12.3 of 48.0 MB: cycles, log.csv');
    expect(at(30_000_000, 48_000_000, 3)).toBe('30.0 of 48.0 MB, 10 MB/s, 2 s left: cycles, log.csv');
    expect(at(20_000_000, 2_000_000_000, 4)).toBe('20.0 of 2000.0 MB, 5.0 MB/s, 7 min left: cycles, log.csv');
  });

  it('does not say what is left from less than a hundredth', () => {
    expect(at(19_900_000, 2_000_000_000, 4)).toBe('19.9 of 2000.0 MB, 5.0 MB/s: cycles, log.csv');
  });

  it('does not guess where sizes are not known', () => {
    expect(at(30_000_000, undefined, 3)).toBe('30.0 MB, 10 MB/s: cycles, log.csv');
  });
});
