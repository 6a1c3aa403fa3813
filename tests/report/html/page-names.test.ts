import { describe, expect, it } from 'vitest';
import { safeNames } from '../../../pipeline/report/html/page-names.ts';

describe('safeNames', () => {
  it('keeps plain ids, cleans others, and keeps names apart where letter case is ignored', () => {
    const names = safeNames(['Q1', 'q1', 'Züri 4', '../../etc', '', '\u624b', 'Q1']);
    expect([...names]).toEqual([
      ['Q1', 'Q1'],
      ['q1', 'q1-2'],
      ['Züri 4', 'Zuri-4'],
      ['../../etc', 'etc'],
      ['', 'x'],
      ['\u624b', 'x-2'],
    ]);
  });

  it('cuts long ids and still tells them apart', () => {
    const names = [...safeNames(['a'.repeat(90), `${'a'.repeat(90)}b`]).values()];
    expect(names).toEqual(['a'.repeat(60), `${'a'.repeat(60)}-2`]);
  });
});
