import { median as medianOf } from 'simple-statistics';
import { intervalInputsSchema } from '../../site/interval-inputs.ts';
import type { Site } from '../../site/site.ts';
import { countsAsDone } from '../../transform/cleaning/due-tasks.ts';
import type { UnitCourse } from '../shares/unit-course.ts';
import type { InputInForce } from './argument-schema.ts';

/** Inputs as numbers for the arithmetic, each with its place in the list that is printed. */
export interface Inputs {
  cool_down_hours: number;
  work_minutes: number;
  warm_up_minutes: number;
  test_minutes: number;
  people: number;
  sprayer_litres: number;
  fillings: number;
  cleaner_ml_per_litre: number;
  hours_out_of_use: number;
  retests: number;
  delayed_loads: number;
  hours_per_abort: number;
  labour_hour: number;
  hour_out_of_use: number;
  cleaner_litre: number;
  other_per_cleaning: number;
  retest: number;
  repair_per_failure: number;
  delayed_load: number;
  abort: number;
}

const MINUTE = 60_000;
/** Fewest values in the record from which a mean or median is taken; fewer: the default. */
const LEAST_VALUES = 3;

/** Inputs in force: the site's, else what the record says, else the default. Costs that are not given are 0 and marked as not given. */
export function inputsInForce(
  site: Site,
  histories: readonly UnitCourse[],
): { inputs: Inputs; list: InputInForce[] } {
  const { cleaning, failure, costs } = site.declared.interval;
  const list: InputInForce[] = [];
  const take = (
    name: keyof Inputs,
    unit: string,
    own: number | undefined,
    record?: { value: number | null; of: number },
    fallback?: number,
  ): number => {
    const value = own ?? record?.value ?? fallback ?? null;
    const origin =
      own !== undefined
        ? 'site'
        : (record?.value ?? null) !== null
          ? 'record'
          : value === null
            ? 'not_given'
            : 'default';
    list.push({ name, unit, value, origin, from_records: origin === 'record' ? record!.of : null });
    return value ?? 0;
  };
  const defaulted = (name: keyof Inputs, unit: string, own: number, standard: number): number => {
    list.push({
      name,
      unit,
      value: own,
      origin: own === standard ? 'default' : 'site',
      from_records: null,
    });
    return own;
  };
  const standard = intervalInputsSchema.parse({}).cleaning;
  const inputs: Inputs = {
    cool_down_hours: defaulted('cool_down_hours', 'h', cleaning.cool_down_hours, standard.cool_down_hours),
    work_minutes: take(
      'work_minutes',
      'min',
      cleaning.work_minutes,
      median(workMinutes(site, histories)),
      45,
    ),
    warm_up_minutes: take(
      'warm_up_minutes',
      'min',
      cleaning.warm_up_minutes,
      median(histories.flatMap((of) => of.warm_up_minutes)),
      20,
    ),
    test_minutes: take(
      'test_minutes',
      'min',
      cleaning.test_minutes,
      median(histories.flatMap((of) => of.test_minutes)),
      25,
    ),
    people: defaulted('people', 'number', cleaning.people, standard.people),
    sprayer_litres: defaulted('sprayer_litres', 'l', cleaning.sprayer_litres, standard.sprayer_litres),
    fillings: defaulted('fillings', 'number', cleaning.fillings, standard.fillings),
    cleaner_ml_per_litre: defaulted(
      'cleaner_ml_per_litre',
      'ml/l',
      cleaning.cleaner_ml_per_litre,
      standard.cleaner_ml_per_litre,
    ),
    hours_out_of_use: take(
      'hours_out_of_use',
      'h',
      failure.hours_out_of_use,
      mean(histories.flatMap((of) => of.failure_hours)),
      0,
    ),
    retests: take('retests', 'number', failure.retests, mean(histories.flatMap((of) => of.retests)), 0),
    delayed_loads: take('delayed_loads', 'number', failure.delayed_loads),
    hours_per_abort: take(
      'hours_per_abort',
      'h',
      failure.hours_per_abort,
      mean(histories.flatMap((of) => of.abort_hours)),
      0,
    ),
    labour_hour: take('labour_hour', 'cost', costs.labour_hour),
    hour_out_of_use: take('hour_out_of_use', 'cost', costs.hour_out_of_use),
    cleaner_litre: take('cleaner_litre', 'cost', costs.cleaner_litre),
    other_per_cleaning: take('other_per_cleaning', 'cost', costs.other_per_cleaning),
    retest: take('retest', 'cost', costs.retest),
    repair_per_failure: take('repair_per_failure', 'cost', costs.repair_per_failure),
    delayed_load: take('delayed_load', 'cost', costs.delayed_load),
    abort: take('abort', 'cost', costs.abort),
  };
  return { inputs, list };
}

/** Length of the work by records of routine chamber cleanings that count: stated minutes, else from begin to end. */
function workMinutes(site: Site, histories: readonly UnitCourse[]): number[] {
  return histories.flatMap((history) =>
    history.chamber_cleanings
      .filter(
        (cleaning) => countsAsDone(cleaning, site.rules.contradicted_counts_as_done) && !cleaning.reactive,
      )
      .flatMap((cleaning) => {
        if (cleaning.minutes !== undefined) return [cleaning.minutes];
        return cleaning.start === undefined ? [] : [(cleaning.time - cleaning.start) / MINUTE];
      })
      .filter((minutes) => minutes > 0),
  );
}

function median(values: readonly number[]): { value: number | null; of: number } {
  if (values.length < LEAST_VALUES) return { value: null, of: values.length };
  return { value: medianOf([...values]), of: values.length };
}

function mean(values: readonly number[]): { value: number | null; of: number } {
  if (values.length < LEAST_VALUES) return { value: null, of: values.length };
  return { value: values.reduce((sum, value) => sum + value, 0) / values.length, of: values.length };
}
