import { type Fleet, recordsOf } from '../fleet.ts';
import { stream } from '../random.ts';
import { row, type Table } from '../table.ts';
import { nameOn } from './tornfell-tests.ts';
import { DONE, date, REASON, SERVICE, stamp, TASK } from './tornfell-words.ts';

/** Cleaning log with a state for each task that was due, and service list. */

export function tornfellCleanings(fleet: Fleet): Table {
  const draw = stream('Tornfell/cleaning initials');
  const cleanings = recordsOf(fleet, 'Tornfell', 'cleanings', (cleaning) => cleaning.time);
  return {
    file: 'tornfell/nettoyages.csv',
    source: 'Tornfell nettoyages',
    preamble: [],
    header: [
      'Appareil',
      'Tâche',
      'Début',
      'Fait ou prévu le',
      'Min.',
      'État',
      'Motif',
      'Remarque',
      'Saisi le',
      'Opér.',
    ],
    rows: cleanings.map((cleaning) =>
      row(
        [
          nameOn(cleaning.unit, cleaning.time),
          TASK[cleaning.task],
          cleaning.start === undefined || cleaning.dateOnly ? '' : stamp(cleaning.start),
          cleaning.dateOnly ? date(cleaning.time) : stamp(cleaning.time),
          cleaning.minutes === undefined ? '' : String(cleaning.minutes),
          DONE[cleaning.state],
          cleaning.reason ? REASON[cleaning.reason] : '',
          cleaning.note,
          stamp(cleaning.entered),
          draw.pick(['aa', 'bx', 'cw', 'dz']),
        ],
        `${cleaning.unit} ${cleaning.task} ${cleaning.time}`,
        cleaning.time,
      ),
    ),
  };
}

export function tornfellService(fleet: Fleet): Table {
  const service = recordsOf(fleet, 'Tornfell', 'service', (record) => record.from);
  return {
    file: 'tornfell/service.csv',
    source: 'Tornfell service',
    preamble: [],
    header: ['Appareil', 'Du', 'Au', 'Nature', 'Majeure', 'Remarque'],
    rows: service.map((record) =>
      row(
        [
          nameOn(record.unit, record.from),
          stamp(record.from),
          record.to === undefined ? '' : stamp(record.to),
          SERVICE[record.kind],
          record.major ? 'oui' : 'non',
          record.note,
        ],
        `${record.unit} ${record.kind} ${record.from}`,
        record.from,
      ),
    ),
  };
}
