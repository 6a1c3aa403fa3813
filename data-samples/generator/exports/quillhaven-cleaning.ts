import { type Fleet, recordsOf } from '../fleet.ts';
import { row, type Table } from '../table.ts';
import { cell, minute, SERVICE, TASK } from './quillhaven-words.ts';

/** Cleaning log (a workbook) and service list. Only what was done stands in the log: a blank is a task that was not done. */

const REASON = { routine: 'plan', reactive: 'after failure' } as const;

export function quillhavenCleanings(fleet: Fleet): Table {
  const cleanings = recordsOf(fleet, 'Quillhaven', 'cleanings', (cleaning) => cleaning.entered);
  return {
    file: 'quillhaven/cleaning-log.xlsx',
    source: 'Quillhaven cleaning log',
    preamble: [],
    header: ['Unit', 'Task', 'Begun', 'Finished', 'Minutes', 'Why', 'Remark', 'Typed at'],
    rows: cleanings.map((cleaning) =>
      row(
        [
          cleaning.unit,
          TASK[cleaning.task],
          cleaning.start === undefined ? null : cell(cleaning.start),
          cell(cleaning.time),
          cleaning.minutes ?? null,
          cleaning.reason ? REASON[cleaning.reason] : null,
          cleaning.note,
          cell(cleaning.entered),
        ],
        `${cleaning.unit} ${cleaning.task} ${cleaning.time}`,
        cleaning.time,
      ),
    ),
  };
}

export function quillhavenService(fleet: Fleet): Table {
  const service = recordsOf(fleet, 'Quillhaven', 'service', (record) => record.from);
  return {
    file: 'quillhaven/service.csv',
    source: 'Quillhaven service',
    preamble: [],
    header: ['Unit', 'From', 'To', 'What', 'Major', 'Remark'],
    rows: service.map((record) =>
      row(
        [
          record.unit,
          minute(record.from),
          record.to === undefined ? '' : minute(record.to),
          SERVICE[record.kind],
          record.major ? 'yes' : 'no',
          record.note,
        ],
        `${record.unit} ${record.kind} ${record.from}`,
        record.from,
      ),
    ),
  };
}
