import { describe, expect, it } from 'vitest';
import { BERLIN, readFiles } from './read-folder.ts';

const HEAD = 'time,unit,action,role,due,done_on,state';
const read = (...rows: string[]) => readFiles({ 'actions.csv': [HEAD, ...rows].join('\n') }, BERLIN);

describe('the list of actions', () => {
  it('is read with dates alone, and with no unit where an action is of none', async () => {
    const { records, problems } = await read(
      '2025-03-04,S1,Inspect the door gasket,biomedical engineering,2025-03-20,2025-03-18,done',
      '2025-03-04,,Write the cool-down into the checklist,department lead,,,',
    );
    expect(problems).toEqual([]);
    expect(records.actions).toMatchObject([
      { action: 'Write the cool-down into the checklist', role: 'department lead', time_mark: 'day' },
      {
        unit: 'S1',
        action: 'Inspect the door gasket',
        // The date stands for the begin of its operating day, 04:00 in Berlin in winter.
        due: Date.UTC(2025, 2, 20, 3),
        done_on: Date.UTC(2025, 2, 18, 3),
        state: 'done',
      },
    ]);
    expect(records.actions[0]).not.toHaveProperty('unit');
  });

  it('keeps an action whose unit is not known, without it and with a problem', async () => {
    const site = { ...BERLIN, units: [{ id: 'S1' }] };
    const { records, problems } = await readFiles(
      { 'actions.csv': `${HEAD}\n2025-03-04,all of them,Look at the log,lead,,,open\n` },
      site,
    );
    expect(records.actions).toMatchObject([{ action: 'Look at the log', state: 'open' }]);
    expect(problems).toMatchObject([{ code: 'unknown_unit', costs: 'cell', value: 'all of them' }]);
  });

  it('tells two actions of one day apart, and counts one that stands twice once', async () => {
    const { records, files } = await read(
      '2025-03-04,S1,One,lead,,,open',
      '2025-03-04,S1,Two,lead,,,open',
      '2025-03-04,S1,Two,lead,,,open',
    );
    expect(records.actions.map((of) => of.action)).toEqual(['One', 'Two']);
    expect(files).toMatchObject([{ rows: 3, records: 2, duplicates: 1, rejected: 0 }]);
  });
});
