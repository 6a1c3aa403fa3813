import { at, isoDay } from '../clock.ts';
import { type Fleet, recordsOf } from '../fleet.ts';
import type { Cycle } from '../history.ts';
import { LAST_DAY, ZONES } from '../scenario.ts';
import { row, type Table, type TableRow } from '../table.ts';
import { fixed, PROGRAM, RESULT, stamp, whole } from './quillhaven-words.ts';

/** Cycle log: one file a quarter, drawn some days after its end, so that files overlap and the last cycles are still running. */

const HEADER = [
  'Unit',
  'Cycle no',
  'Program',
  'Started',
  'Ended',
  'Result',
  'Message',
  'Evacuation (s)',
  'Heat-up (s)',
  'Exposure (s)',
  'Exhaust (s)',
  'Drying (s)',
  'Temp min (C)',
  'Temp max (C)',
  'Pressure (kPa)',
  'Dry vacuum (kPa)',
  'Drain temp (C)',
];

/** Quarter: first day, day and minute of the day on which the file was drawn. */
const QUARTERS = [
  { name: '2025-q2', from: '2025-04-01', drawn: '2025-07-03', minute: 581 },
  { name: '2025-q3', from: '2025-07-01', drawn: '2025-10-04', minute: 703 },
  { name: '2025-q4', from: '2025-10-01', drawn: '2026-01-06', minute: 655 },
  { name: '2026-q1', from: '2026-01-01', drawn: '2026-04-02', minute: 497 },
  { name: '2026-q2', from: '2026-04-01', drawn: '2026-07-04', minute: 628 },
  { name: '2026-q3', from: '2026-07-01', drawn: '2026-10-01', minute: 246 },
] as const;

export function quillhavenCycles(fleet: Fleet): Table[] {
  const zone = ZONES.Quillhaven;
  const cycles = recordsOf(fleet, 'Quillhaven', 'cycles', (cycle) => cycle.start);
  return QUARTERS.map(({ name, from, drawn, minute }) => {
    const first = at(zone, dayOf(from), 240);
    const last = at(zone, dayOf(drawn), minute);
    const rows = cycles
      .filter((cycle) => cycle.start >= first && cycle.start <= last)
      .map((cycle) => (cycle.end > last ? running(cycle) : finished(cycle)));
    const until = isoDay(Math.min(LAST_DAY, dayOf(drawn)));
    return {
      file: `quillhaven/cycle-log-${name}.csv`,
      source: 'Quillhaven cycle log',
      preamble: [
        'Marrow Bay Sterile Supply (invented), Quillhaven',
        `Cycle log from ${from} to ${until}`,
        `Drawn ${stamp(last)} local time`,
      ],
      header: HEADER,
      rows,
    };
  });
}

const dayOf = (iso: string): number => Date.parse(iso) / 86_400_000;

const keyOf = (cycle: Cycle): string => `${cycle.unit} ${cycle.number} ${cycle.start}`;

function finished(cycle: Cycle): TableRow {
  const program = cycle.kind === 'production' && cycle.program ? cycle.program : PROGRAM[cycle.kind];
  return row(
    [
      cycle.unit,
      String(cycle.number),
      program,
      stamp(cycle.start),
      stamp(cycle.end),
      RESULT[cycle.outcome],
      cycle.abort?.text ?? '',
      whole(cycle.evacuation),
      whole(cycle.heatUp),
      whole(cycle.exposure),
      whole(cycle.exhaust),
      whole(cycle.drying),
      fixed(cycle.temperatureMin, 1),
      fixed(cycle.temperatureMax, 1),
      fixed(cycle.pressure, 1),
      fixed(cycle.dryVacuum, 1),
      fixed(cycle.drainTemperature, 1),
    ],
    keyOf(cycle),
    cycle.start,
  );
}

/** A cycle that was not over when the file was drawn. */
function running(cycle: Cycle): TableRow {
  const whole = finished(cycle);
  const cells = whole.cells.map((value, index) => (index < 4 ? value : index === 5 ? RESULT.running : ''));
  return { ...whole, cells };
}
