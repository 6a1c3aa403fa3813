import { groupBy } from '../../group-by.ts';
import type { Day } from '../../site/day.ts';
import type { CleaningTask } from '../../site/vocabulary.ts';
import type { Era } from '../../transform/service/eras.ts';
import type { UnitHistory } from '../../transform/unit-history.ts';
import { type DayValue, dayValues } from './day-values.ts';
import { type CheckedValues, checkValues } from './faulty-values.ts';
import { wetBefore, wetWorks } from './leak-after-cleaning.ts';
import { type ProbeValue, probeValues } from './probe-values.ts';
import { PROBES, type Probe } from './probes.ts';

/** What is asked of a unit's history once its series are made. */
export type SeriesHistory = Pick<UnitHistory, 'unit' | 'site' | 'episodes'>;

/** A probe of a unit in one era, before anything is taken out of it. */
export interface EraSeries {
  history: SeriesHistory;
  probe: Probe;
  era: Era;
  current: boolean;
  /** First and last operating day of the era with a cycle or test, up to the end of the period. */
  from: Day;
  to: Day;
  /** What was found wrong with the values; those that are left are in `days`. */
  checked: Omit<CheckedValues, 'values'>;
  /** Leak tests soon after a cleaning, left out of the values. */
  wet: ProbeValue[];
  /** Share of the era's cycles that should have given a value and did not. */
  missing: number;
  days: DayValue[];
  /** Times of the cleanings of the era up to its last day, by task, in order. */
  cleanings: ReadonlyMap<CleaningTask, number[]>;
}

/** The series of all probes of a unit, by era; they hold no more of its history than is asked of it. A probe of which the record holds nothing has no series, but where cycles ran without it. */
export function eraSeries(history: UnitHistory, until: Day, wetHours: number): EraSeries[] {
  const eras = history.eras.filter((era) => era.from < until);
  const values = probeValues(history, until);
  const works = wetWorks(history);
  const cleanings = history.cleanings.filter((of) => of.done && !of.contradicted);
  const used = history.use_days.filter((use) => use.day < until);
  const { unit, site, episodes } = history;
  const held: SeriesHistory = { unit, site, episodes };
  return PROBES.flatMap((probe) => {
    const all = values[probe];
    if (all.values.length === 0 && all.cycles === 0) return [];
    return eras.flatMap((era): EraSeries[] => {
      const current = era === eras.at(-1);
      const inEra = (day: Day) => day >= era.from && day <= era.to;
      const own = all.values.filter((of) => inEra(of.day));
      if (own.length === 0 && !current) return [];
      const days = used.filter((use) => inEra(use.day)).map((use) => use.day);
      const first = Math.min(days[0] ?? until - 1, own[0]?.day ?? until - 1);
      const last = Math.max(days.at(-1) ?? first, own.at(-1)?.day ?? first);
      const wet = probe === 'leak_rate' ? own.filter((of) => wetBefore(works, timed(of), wetHours)) : [];
      const { values: left, ...checked } = checkValues(
        probe,
        own.filter((of) => !wet.includes(of)),
      );
      const cycles = all.cycleDays.filter(inEra).length;
      const missing = cycles === 0 ? 0 : all.missingDays.filter(inEra).length / cycles;
      return [
        {
          history: held,
          probe,
          era,
          current,
          from: first,
          to: last,
          checked,
          wet,
          missing,
          days: dayValues(probe, left),
          cleanings: timesByTask(cleanings.filter((of) => inEra(of.day) && of.day <= last)),
        },
      ];
    });
  });
}

const timed = (of: ProbeValue) => ({ time: of.at, day: of.day });

function timesByTask(cleanings: UnitHistory['cleanings']): Map<CleaningTask, number[]> {
  return new Map(
    [...groupBy(cleanings, (of) => of.task)].map(([task, own]) => [
      task,
      own.map((of) => of.time).sort((a, b) => a - b),
    ]),
  );
}
