import type { FieldHolds } from './records.ts';

/**
 * Units of measure that a source may declare for a column. Records always hold the first of each family:
 * degrees Celsius, kPa absolute, seconds, kPa/min.
 */
export const TEMPERATURE_MEASURES = ['C', 'F'] as const;
export const PRESSURE_MEASURES = [
  'kPa absolute',
  'kPa gauge',
  'kPa vacuum',
  'bar absolute',
  'bar gauge',
  'bar vacuum',
  'mbar absolute',
  'mbar gauge',
  'mbar vacuum',
  'psi absolute',
  'psi gauge',
  'psi vacuum',
  'mmHg absolute',
  'mmHg gauge',
  'mmHg vacuum',
  'inHg absolute',
  'inHg gauge',
  'inHg vacuum',
] as const;
export const DURATION_MEASURES = ['s', 'min', 'mm:ss', 'hh:mm:ss'] as const;
export const LEAK_MEASURES = [
  'kPa per min',
  'mbar per min',
  'mmHg per min',
  'psi per min',
  'inHg per min',
  'kPa per 10 min',
  'mbar per 10 min',
  'mmHg per 10 min',
  'psi per 10 min',
  'inHg per 10 min',
] as const;
export const MEASURES = [
  ...TEMPERATURE_MEASURES,
  ...PRESSURE_MEASURES,
  ...DURATION_MEASURES,
  ...LEAK_MEASURES,
] as const;
export type Measure = (typeof MEASURES)[number];

/** Measures by what a field holds; a field that holds anything else has none. */
export const MEASURES_OF: Partial<Record<FieldHolds, readonly Measure[]>> = {
  temperature: TEMPERATURE_MEASURES,
  pressure: PRESSURE_MEASURES,
  duration: DURATION_MEASURES,
  leak_rate: LEAK_MEASURES,
};

/** What is wrong with the measure that is declared for a field; undefined where nothing is. */
export function measureAmiss(holds: FieldHolds, measure: Measure): string | undefined {
  const family = MEASURES_OF[holds];
  if (family?.includes(measure)) return undefined;
  const wanted = family
    ? `must be one of ${family.join(', ')}`
    : 'must be left out, since the field has none';
  return `${wanted}, found "${measure}"`;
}
