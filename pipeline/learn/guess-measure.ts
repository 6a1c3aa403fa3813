import { toKilopascal, toKilopascalPerMinute } from '../ingest/codecs/conversions.ts';
import { DURATION_MEASURES, LEAK_MEASURES, type Measure, PRESSURE_MEASURES } from '../site/measures.ts';
import { STANDARD_ATMOSPHERE_KPA } from '../steam/pressure.ts';
import { saturationKilopascals } from '../steam/saturation.ts';
import { certain, type Guess, likely, open } from './guess.ts';
import { median } from './guess-numbers.ts';
import { agreeing, type HeaderMeasure } from './header-measure.ts';

/** How far from saturation the pressure of an exposure may lie to fit a measure: sensors, air, and the barometer of a place that isn't known. */
const FITS_WITHIN = 0.06;
/** From here on another measure does not fit at all. */
const FAR = 0.12;

/**
 * Temperature by its range: steam sterilizes at 115 to 140 C, which is 239 to 284 F; no reading can be both. Source of the range: usual exposure is 121 to
 * 135 C (EN 285; common practice).
 */
export function guessTemperature(values: readonly number[], said: HeaderMeasure): Guess<Measure> {
  const middle = median(values);
  const range: Measure | undefined =
    middle === undefined
      ? undefined
      : middle >= 100 && middle <= 145
        ? 'C'
        : middle >= 212 && middle <= 293
          ? 'F'
          : undefined;
  if (said.temperature !== undefined) {
    if (range === undefined && middle !== undefined)
      return certain(said.temperature, `the header says so; ${middle} fits no exposure`);
    if (range === undefined || range === said.temperature)
      return certain(said.temperature, 'the header says so');
    return open(['C', 'F'], `the header says ${said.temperature}, but ${middle} fits ${range}`);
  }
  if (range !== undefined) return certain(range, `${middle} can't be an exposure in the other measure`);
  return open(['C', 'F'], middle === undefined ? 'no value' : `${middle} fits no exposure`);
}

/**
 * Pressure in exposure by saturated steam: of the measures that the header allows, the one whose absolute pressure fits the temperature of the same exposures
 * (IAPWS-IF97, through `saturationKilopascals`), gauge readings on a standard atmosphere.
 *
 * @param celsius median exposure temperature; undefined where it isn't known
 */
export function guessExposurePressure(
  values: readonly number[],
  said: HeaderMeasure,
  celsius: number | undefined,
): Guess<Measure> {
  const options = agreeing(PRESSURE_MEASURES, said).filter(
    (measure) => said.reference === 'vacuum' || !measure.endsWith('vacuum'),
  );
  if (said.unknown !== undefined) return open([], `${said.unknown} is no measure that can be read`);
  const middle = median(values);
  const saturation = celsius === undefined ? undefined : saturationKilopascals(celsius);
  if (middle === undefined || !saturation?.computable) {
    return options.length === 1
      ? certain(options[0]!, 'the header says so')
      : open(options, 'no exposure temperature to judge it by');
  }
  const wanted = saturation.kilopascals;
  const away = (measure: Measure): number => {
    const found = toKilopascal(measure, STANDARD_ATMOSPHERE_KPA)(middle);
    return found === undefined ? Number.POSITIVE_INFINITY : Math.abs(found / wanted - 1);
  };
  const why = (measure: Measure) =>
    `${middle} as ${measure} is ${toKilopascal(measure, STANDARD_ATMOSPHERE_KPA)(middle)!.toFixed(0)} kPa absolute; saturated steam at ${celsius!.toFixed(1)} C has ${wanted.toFixed(0)}`;
  const fitting = options.filter((measure) => away(measure) <= FITS_WITHIN);
  const near = options.filter((measure) => away(measure) <= FAR);
  const best = fitting[0];
  if (fitting.length !== 1 || best === undefined)
    return open(
      options,
      fitting.length === 0
        ? `${middle} fits saturated steam at ${celsius!.toFixed(1)} C in no measure`
        : `${middle} fits in several measures`,
    );
  if (said.pressure !== undefined && near.length === 1) return certain(best, why(best));
  return likely(best, why(best), near);
}

/** Deepest vacuum in drying lies from about 1 to 15 kPa absolute (usual set points 3 to 10; from memory). */
const DRY_VACUUM_KPA = [0.5, 20] as const;

/** Whether the middle of the numbers is a depth of vacuum in drying in any measure. */
export function canBeDryVacuum(values: readonly number[]): boolean {
  const middle = median(values);
  return (
    middle === undefined ||
    PRESSURE_MEASURES.some((measure) => {
      const found = toKilopascal(measure, STANDARD_ATMOSPHERE_KPA)(middle);
      return found !== undefined && found >= DRY_VACUUM_KPA[0] && found <= DRY_VACUUM_KPA[1];
    })
  );
}

export function guessDryVacuum(
  values: readonly number[],
  said: HeaderMeasure,
  exposure: Guess<Measure> | undefined,
): Guess<Measure> {
  if (said.unknown !== undefined) return open([], `${said.unknown} is no measure that can be read`);
  const middle = median(values);
  // "Vacuum" in the name of the column is what it is about, and no word for how it is counted.
  const loose = said.reference === 'vacuum' ? { ...said, reference: undefined } : said;
  const fits = (measure: Measure): boolean => {
    const found = middle === undefined ? undefined : toKilopascal(measure, STANDARD_ATMOSPHERE_KPA)(middle);
    return found !== undefined && found >= DRY_VACUUM_KPA[0] && found <= DRY_VACUUM_KPA[1];
  };
  const options = agreeing(PRESSURE_MEASURES, loose);
  const fitting = options.filter(fits);
  if (fitting.length === 1) {
    const why = `${middle} in drying fits no other measure`;
    return said.pressure !== undefined ? certain(fitting[0]!, why) : likely(fitting[0]!, why);
  }
  const same = exposure?.value;
  if (same !== undefined && said.pressure === undefined && fitting.includes(same))
    return likely(same, 'as the pressure in exposure', fitting);
  return open(
    fitting.length > 0 ? fitting : options,
    middle === undefined
      ? 'no value'
      : `${middle} fits ${fitting.length === 0 ? 'no' : 'more than one'} measure`,
  );
}

/** Plausible lengths of the phases, seconds (common practice and memory; wide on purpose). */
const PHASE_SECONDS: Readonly<Record<string, readonly [number, number]>> = {
  evacuation_s: [90, 2400],
  heat_up_s: [40, 3600],
  exposure_s: [120, 7200],
  exhaust_s: [30, 3600],
  drying_s: [45, 7200],
};

/**
 * Seconds, minutes or clock-like lengths of the phases. All numeric columns without a word in the header are judged together, since an export writes them alike.
 *
 * @param columns field, header's word and values (clock-like texts as such) of each column
 */
export function guessDurations(
  columns: readonly {
    field: string;
    said: HeaderMeasure;
    values: readonly number[];
    clocks: readonly string[];
  }[],
): Map<string, Guess<Measure>> {
  const found = new Map<string, Guess<Measure>>();
  const plain = columns.filter(({ clocks, said }) => clocks.length === 0 && said.duration === undefined);
  const possible = (['s', 'min'] as const).filter((measure) =>
    plain.every(({ field, values }) => {
      const middle = median(values);
      const [least, most] = PHASE_SECONDS[field] ?? [0, 86_400];
      const seconds = (middle ?? 0) * (measure === 'min' ? 60 : 1);
      return middle === undefined || (seconds >= least && seconds <= most);
    }),
  );
  for (const { field, said, values, clocks } of columns) {
    if (clocks.length > 0) found.set(field, clockMeasure(field, clocks, said));
    else if (said.duration === 's' || said.duration === 'min')
      found.set(field, certain(said.duration, 'the header says so'));
    else if (possible.length === 1 && values.length > 0)
      found.set(
        field,
        likely(possible[0]!, `${median(values)} fits a phase in no other measure`, DURATION_MEASURES),
      );
    else
      found.set(
        field,
        open(['s', 'min'], values.length === 0 ? 'no value' : `${median(values)} may be either`),
      );
  }
  return found;
}

function clockMeasure(field: string, clocks: readonly string[], said: HeaderMeasure): Guess<Measure> {
  const parts = clocks[0]!.split(':').length;
  if (parts === 3) return certain('hh:mm:ss', 'three parts');
  if (said.duration === 'mm:ss') return certain('mm:ss', 'the header says so');
  const middle = median(
    clocks.map((text) => {
      const [a = 0, b = 0] = text.split(':').map(Number);
      return a * 60 + b;
    }),
  )!;
  const [least, most] = PHASE_SECONDS[field] ?? [0, 86_400];
  if (middle >= least && middle <= most && middle * 60 > most)
    return certain('mm:ss', `as hours and minutes it would take ${Math.round(middle / 60)} hours`);
  return open(['mm:ss', 'hh:mm:ss'], 'minutes and seconds, or hours and minutes');
}

/** Leak limit of EN 285, kPa/min: the value by which a limit column shows its measure. */
const LEAK_LIMIT = 0.13;

export function guessLeak(
  values: readonly number[],
  said: HeaderMeasure,
  limits: readonly number[],
): Guess<Measure> {
  const options = LEAK_MEASURES.filter((measure) => {
    const [unit = '', ...per] = measure.split(' ');
    return (
      (said.pressure === undefined || unit === said.pressure) &&
      (said.per === undefined || per.join(' ') === said.per)
    );
  });
  if (options.length === 1) return certain(options[0]!, 'the header says so');
  const limit = median(limits);
  const fitting =
    limit === undefined
      ? []
      : options.filter((measure) => Math.abs(toKilopascalPerMinute(measure)(limit) / LEAK_LIMIT - 1) <= 0.08);
  const value = median(values);
  const plausible = options.filter(
    (measure) =>
      value !== undefined &&
      toKilopascalPerMinute(measure)(value) >= 0.004 &&
      toKilopascalPerMinute(measure)(value) <= 0.3,
  );
  const why = `the limit ${limit} is 0.13 kPa/min so`;
  if (fitting.length === 1) return likely(fitting[0]!, why, options);
  if (fitting.length > 1 && said.pressure !== undefined) return likely(fitting[0]!, why, options);
  return open(
    plausible.length > 0 ? plausible : options,
    value === undefined ? 'no value' : `${value} is possible in more than one measure`,
  );
}
