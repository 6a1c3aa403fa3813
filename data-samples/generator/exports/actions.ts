import { row, type Table } from '../table.ts';

/** Actions that the reviews of Quillhaven decided on, invented: decided, unit, action, role, due, done, state. */
const ACTIONS = [
  [
    '2026-06-09',
    'Q3',
    'Ask the evening shift when the strainer can be cleaned before the first cycle',
    'department lead',
    '2026-06-30',
    '2026-06-24',
    'done',
  ],
  [
    '2026-07-07',
    '',
    'Write the cool-down of the chamber into the cleaning checklist',
    'department lead',
    '2026-07-31',
    '2026-08-11',
    'done',
  ],
  [
    '2026-07-07',
    'Q5',
    'Order the yearly contractor clean',
    'biomedical engineering',
    '2026-08-31',
    '',
    'open',
  ],
  [
    '2026-08-11',
    'Q2',
    'Plan chamber cleanings for a day on which they are not moved',
    'department lead',
    '2026-09-15',
    '',
    'open',
  ],
  [
    '2026-08-11',
    'Q4',
    'Have drain and strainer looked at, and the evacuation time watched',
    'biomedical engineering',
    '2026-09-04',
    '2026-09-02',
    'done',
  ],
  [
    '2026-09-08',
    'Q1',
    'Have the door gasket looked at',
    'biomedical engineering',
    '2026-09-22',
    '2026-09-25',
    'done',
  ],
  [
    '2026-09-08',
    'Q6',
    'Ask who flushes the drain when the unit is out of use on the flushing day',
    'department lead',
    '2026-10-09',
    '',
    'open',
  ],
  ['2026-09-08', '', 'Move the printer nearer to the units', 'department lead', '', '', 'dropped'],
] as const;

/** The list of actions that a site keeps, with the columns of the record. Its first lines stand in the reviews of earlier months. */
export function actions(): Table {
  return {
    file: 'quillhaven/actions.csv',
    source: 'Quillhaven actions',
    preamble: [],
    header: ['time', 'unit', 'action', 'role', 'due', 'done_on', 'state'],
    rows: ACTIONS.map((cells) => row([...cells], `${cells[0]} ${cells[2]}`, Date.parse(cells[0]))),
  };
}
