import { at } from '../clock.ts';
import type { Fleet } from '../fleet.ts';
import type { Cycle } from '../history.ts';
import { type Stream, stream } from '../random.ts';
import { UNITS, ZONES } from '../scenario.ts';
import { row, type Table, type TableRow } from '../table.ts';
import { RENAMED } from '../unit-stories.ts';
import {
  FABRICS,
  fahrenheit,
  inHgVacuum,
  minutesSeconds,
  psiGauge,
  STATE,
  stamp,
  TYPE,
} from './tornfell-words.ts';

/** Cycle log: one file a unit, whose name stands in the file's name alone. T1 has two: one under its old name. */

const HEADER = [
  'N°',
  'Début',
  'Fin',
  'Type',
  'État',
  'Message',
  'Évacuation',
  'Montée',
  'Plateau',
  'Échappement',
  'Séchage',
  'T° min (°F)',
  'T° max (°F)',
  'Pression (psi, relative)',
  'Vide de séchage (poHg)',
  'Lot',
  'Opér.',
];

export function tornfellCycles(fleet: Fleet): Table[] {
  const draw = stream('Tornfell/columns not mapped');
  const zone = ZONES.Tornfell;
  return UNITS.filter((plan) => plan.site === 'Tornfell').flatMap((plan) => {
    const all = fleet.get(plan.id)!.cycles.map((cycle) => ({ cycle, line: rowOf(cycle, draw) }));
    if (plan.id !== RENAMED.unit)
      return [
        table(
          plan.id,
          all.map(({ line }) => line),
        ),
      ];
    const newFrom = at(zone, RENAMED.bothFrom, 240);
    const oldUntil = at(zone, RENAMED.lastDay + 1, 0);
    return [
      table(
        RENAMED.oldName,
        all.filter(({ cycle }) => cycle.start < oldUntil).map(({ line }) => line),
      ),
      table(
        plan.id,
        all.filter(({ cycle }) => cycle.start >= newFrom).map(({ line }) => line),
      ),
    ];
  });
}

const table = (name: string, rows: TableRow[]): Table => ({
  file: `tornfell/journal_${name}.csv`,
  source: 'Tornfell journal',
  preamble: [],
  header: HEADER,
  rows,
});

function rowOf(cycle: Cycle, draw: Stream): TableRow {
  const type = cycle.program === 'fabrics' && cycle.kind === 'production' ? FABRICS : TYPE[cycle.kind];
  const lot = cycle.kind === 'production' || cycle.kind === 'liquids' ? `L${draw.int(100000, 999999)}` : '';
  return row(
    [
      String(cycle.number),
      stamp(cycle.start),
      stamp(cycle.end),
      type,
      STATE[cycle.outcome],
      cycle.abort?.text ?? '',
      minutesSeconds(cycle.evacuation),
      minutesSeconds(cycle.heatUp),
      minutesSeconds(cycle.exposure),
      minutesSeconds(cycle.exhaust),
      minutesSeconds(cycle.drying),
      fahrenheit(cycle.temperatureMin),
      fahrenheit(cycle.temperatureMax),
      psiGauge(cycle.pressure),
      inHgVacuum(cycle.dryVacuum),
      lot,
      draw.pick(['aa', 'bx', 'cw', 'dz']),
    ],
    `${cycle.unit} ${cycle.number} ${cycle.start}`,
    cycle.start,
  );
}
