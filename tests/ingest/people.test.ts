import { describe, expect, it } from 'vitest';
import type { SiteFileInput } from '../../pipeline/site/site-schema.ts';
import { BERLIN, readFiles } from './read-folder.ts';

const FILE = {
  'air-removal-tests.csv':
    'unit,time,result,person\nS1,2025-03-03 06:40,pass,What do ya want for nothing?\nS1,2025-03-04 06:40,pass, WHAT do  ya want for nothing?\nS1,2025-03-05 06:40,pass,\n',
};
const ASKED: SiteFileInput = {
  ...BERLIN,
  sources: [{ kind: 'air_removal_tests', files: '*.csv', columns: { person: 'person' } }],
};
const personKey = Buffer.from('Jefe');

describe('names of people', () => {
  it('are not read unless the site asks, even where a column has the field’s name', async () => {
    const { records } = await readFiles(FILE, BERLIN, { personKey });
    expect(JSON.stringify(records)).not.toMatch(/want|person/i);
  });

  it('are kept as a keyed hash alone', async () => {
    const { records } = await readFiles(FILE, ASKED, { personKey });
    // RFC 4231, test case 2: HMAC-SHA-256 of "what do ya want for nothing?" under "Jefe" begins so.
    expect(records.air_removal_tests.map(({ person }) => person)).toEqual([
      '5bdcc146bf60754e',
      '5bdcc146bf60754e',
      undefined,
    ]);
    expect(JSON.stringify(records)).not.toMatch(/want/i);
    const other = await readFiles(FILE, ASKED, { personKey: Buffer.from('another key') });
    expect(other.records.air_removal_tests[0]!.person).not.toBe('5bdcc146bf60754e');
  });

  it('need a key', async () => {
    await expect(readFiles(FILE, ASKED)).rejects.toMatchObject({ code: 'person_key' });
  });
});
