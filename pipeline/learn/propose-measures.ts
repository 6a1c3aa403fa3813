import type { Measure } from '../site/measures.ts';
import type { FieldMatch } from './field-match.ts';
import { certain, type Guess } from './guess.ts';
import {
  guessDryVacuum,
  guessDurations,
  guessExposurePressure,
  guessLeak,
  guessTemperature,
} from './guess-measure.ts';
import { type Mark, median, numbersOf } from './guess-numbers.ts';
import type { ProposedColumn } from './proposal.ts';

const DURATIONS = ['evacuation_s', 'heat_up_s', 'exposure_s', 'exhaust_s', 'drying_s'];

/** Puts the unit of measure to each column that has one; those of a table are judged together. */
export function proposeMeasures(
  matches: readonly FieldMatch[],
  columns: readonly ProposedColumn[],
  mark: Mark,
): void {
  const of = (field: string) => {
    const match = matches.find((one) => one.field === field);
    const column = columns.find((one) => one.field === field);
    const profile = match?.columns[0];
    return profile && column ? { column, profile, values: numbersOf(profile.texts, mark) } : undefined;
  };
  for (const field of ['exposure_temperature_min_c', 'exposure_temperature_max_c'] as const) {
    const found = of(field);
    if (found) found.column.measure = guessTemperature(found.values, found.profile.said);
  }
  const hot = of('exposure_temperature_min_c') ?? of('exposure_temperature_max_c');
  const drain = of('drain_temperature_c');
  if (drain) {
    const same = hot?.column.measure?.value;
    const own = guessTemperature(drain.values, drain.profile.said);
    drain.column.measure =
      own.confidence !== 'certain' && same !== undefined
        ? { ...own, value: same, confidence: 'likely', why: 'as the exposure temperature' }
        : own;
  }
  // Values rise and fall together in exposure; the middle of each stands for the same exposures.
  const celsius = hot && celsiusOf(median(hot.values), hot.column.measure);
  const pressure = of('exposure_pressure_kpa');
  if (pressure)
    pressure.column.measure = guessExposurePressure(pressure.values, pressure.profile.said, celsius);
  const vacuum = of('dry_vacuum_kpa');
  if (vacuum)
    vacuum.column.measure = guessDryVacuum(vacuum.values, vacuum.profile.said, pressure?.column.measure);
  const phases = DURATIONS.flatMap((field) => {
    const found = of(field);
    return found
      ? [{ field, said: found.profile.said, values: found.values, clocks: found.profile.clocks, found }]
      : [];
  });
  const guesses = guessDurations(phases);
  for (const { field, found } of phases)
    found.column.measure =
      found.profile.dateCells > 0.5 || found.profile.clockCells > 0.5
        ? certain<Measure>('hh:mm:ss', 'cells of time')
        : guesses.get(field)!;
  const leak = of('leak_rate_kpa_min');
  const limit = of('limit_kpa_min');
  if (leak) leak.column.measure = guessLeak(leak.values, leak.profile.said, limit?.values ?? []);
  if (limit) {
    const own = guessLeak(limit.values, limit.profile.said, limit.values);
    limit.column.measure =
      own.confidence !== 'certain' && leak?.column.measure?.value !== undefined ? leak.column.measure : own;
    if (leak && leak.column.measure?.confidence === 'open' && own.confidence === 'certain')
      leak.column.measure = { ...own, confidence: 'likely', why: 'as the limit' };
  }
}

const celsiusOf = (value: number | undefined, measure: Guess<Measure> | undefined): number | undefined =>
  value === undefined || measure?.value === undefined
    ? undefined
    : measure.value === 'F'
      ? ((value - 32) * 5) / 9
      : value;
