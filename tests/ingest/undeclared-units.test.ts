import { readdir, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { readExports } from '../../pipeline/ingest/read-exports.ts';
import { openInputs, type ReadJob, readJob } from '../../pipeline/ingest/read-jobs.ts';
import { expectedText } from '../../pipeline/report/words/de/expected.ts';
import { readSiteFile } from '../../pipeline/site/read-site-file.ts';
import { BERLIN, readFiles, withFolder } from './read-folder.ts';

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

  const named = (...units: string[]) =>
    HEAD + units.map((unit, at) => `${unit},2025-03-0${at + 1} 05:00,production,completed`).join('\n');
  const CLEANED = 'unit,task,time\nq1,chamber,2025-03-03 10:00\nTu\u0308r 2,chamber,2025-03-03 12:00\n';

  it('spellings of one name are one unit, called as it is spelled first in order of source, file and row', async () => {
    const { records } = await readFiles({
      'cycles-b.csv': named('q1', 't\u00fcr  2', 'Q1'),
      'cycles-a.csv': named('Q2', 'Q1', 'q2', 'Q1'),
      'cleanings.csv': CLEANED,
    });
    expect(new Set(records.cycles.map(({ unit }) => unit))).toEqual(new Set(['Q2', 'Q1', 't\u00fcr 2']));
    expect(records.cleanings.map(({ unit }) => unit)).toEqual(['Q1', 't\u00fcr 2']);
    // The cycle of the first file and that of the second are one and the same.
    expect(records.cycles.filter(({ unit }) => unit === 'Q1').map(({ start }) => start)).toEqual(
      ['2025-03-01', '2025-03-02', '2025-03-03', '2025-03-04'].map((day) => Date.parse(`${day}T04:00Z`)),
    );
  });

  it('a cleaning policy says how its unit is called', async () => {
    const site = { ...BERLIN, cleaning: [{ task: 'chamber' as const, every: 7, units: ['Q1'] }] };
    const { records } = await readFiles({ 'cycles.csv': named('q1', 'q2') }, site);
    expect(records.cycles.map(({ unit }) => unit)).toEqual(['Q1', 'q2']);
  });

  it('units of file names and those that water serves are called likewise', async () => {
    const source = (kind: 'cycles' | 'water', files: string, columns: Record<string, unknown>) => ({
      kind,
      files,
      columns: columns as Record<string, string>,
    });
    const site = {
      ...BERLIN,
      sources: [
        source('cycles', 'log-*.csv', { unit: { file_name: 'log-*.csv' } }),
        source('water', 'water.csv', {}),
      ],
    };
    const { records } = await readFiles(
      {
        'log-Q1.csv': 'start,kind,outcome\n2025-03-01 05:00,production,completed',
        'log-q1.csv': 'start,kind,outcome\n2025-03-02 05:00,production,completed',
        'water.csv':
          'point,time,determinand,value,measure,units\nA,2025-03-01,conductivity,5,uS/cm,"q1, X9 Q1"\n',
      },
      site,
    );
    expect(records.cycles.map(({ unit }) => unit)).toEqual(['Q1', 'Q1']);
    expect(records.water.map(({ units }) => units)).toEqual(['Q1, X9 Q1']);
  });

  it('what is kept of a file does not depend on the others, and in threads the same comes out', async () => {
    const b = named('q1');
    await withFolder({ 'cycles-b.csv': b, 'cycles-c.csv': named('Q1', 'Q1') }, async (folder) => {
      const site = readSiteFile(JSON.stringify(BERLIN), 'site.yaml');
      const history = path.join(folder, 'history');
      const read = () => readExports(site, folder, { history, ignore: ['history'] });
      expect(new Set((await read()).records.cycles.map(({ unit }) => unit))).toEqual(new Set(['q1']));
      const kept = await readdir(history);
      await writeFile(path.join(folder, 'cycles-a.csv'), named('Q1', 'Q1', 'Q1'));
      const again = await read();
      expect(new Set(again.records.cycles.map(({ unit }) => unit))).toEqual(new Set(['Q1']));
      expect(await readdir(history)).toEqual(expect.arrayContaining(kept));
      // The first file is answered last.
      const inputs = await openInputs(site, folder, { ignore: ['history'] });
      const late = async (job: ReadJob) => {
        if (job.file === 'cycles-a.csv') await new Promise((resolve) => setTimeout(resolve, 50));
        return readJob(inputs, job);
      };
      expect(await readExports(site, folder, { ignore: ['history'], readElsewhere: late })).toEqual(again);
    });
  });
});
