import { describe, expect, it } from 'vitest';
import { expectedText } from '../../pipeline/report/words/de/expected.ts';
import { BERLIN, readFiles } from './read-folder.ts';

const HEAD = 'unit,start,kind,outcome\n';

describe('where no units are declared', () => {
  it('a row is refused whose unit would mean all units together, and no other', async () => {
    const rows = ['fleet', 'U1', ' Fleet ', 'fleet 1'].map(
      (unit, at) => `${unit},2025-03-03 0${at + 5}:00,production,completed`,
    );
    const { records, problems } = await readFiles({ 'cycles.csv': HEAD + rows.join('\n') });
    expect(records.cycles.map(({ unit }) => unit)).toEqual(['U1', 'fleet 1']);
    expect(problems).toMatchObject([
      { code: 'unknown_unit', row: 2, column: 'unit', value: 'fleet', costs: 'row' },
      { code: 'unknown_unit', row: 4, column: 'unit', costs: 'row' },
    ]);
    expect(expectedText(problems[0]!.expected)).not.toContain('englisch');
  });

  it('a declared unit may have that name as an alias', async () => {
    const site = { ...BERLIN, units: [{ id: 'U1', aliases: [{ name: 'fleet' }] }] };
    const { records } = await readFiles(
      { 'cycles.csv': `${HEAD}fleet,2025-03-03 05:00,production,completed` },
      site,
    );
    expect(records.cycles.map(({ unit }) => unit)).toEqual(['U1']);
  });
});
