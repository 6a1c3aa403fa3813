import { toKilopascalPerMinute } from '../../ingest/codecs/conversions.ts';
import type { Measure } from '../../site/measures.ts';
import type { ReportMeasures } from '../../site/report-settings.ts';

/** The measures of records and review, which the report has where the site says nothing else. */
export const DEFAULT_MEASURES: ReportMeasures = { pressure: 'kPa', temperature: 'C' };

/** How values are written in the measures of a site. What is converted here are rates and differences alone: no point zero takes part. */
export interface MeasureNames {
  /** Rise of pressure in a minute. */
  leakRate: string;
  /** Difference of two temperatures. */
  temperatureDifference: string;
}

export function measureNames({ pressure, temperature }: ReportMeasures): MeasureNames {
  return {
    leakRate: `${pressure}/min`,
    temperatureDifference: temperature === 'F' ? '°F' : 'K',
  };
}

/** A rise of pressure in the measure of the report, from kPa/min: the reading of inputs turned round, with its factors. */
export function leakRateIn({ pressure }: ReportMeasures): (kilopascalPerMinute: number) => number {
  if (pressure === 'kPa') return (value) => value;
  const one = pressure === 'bar' ? 1000 * ofOne('mbar per min') : ofOne(`${pressure} per min`);
  return (value) => rounded(value / one);
}

const ofOne = (measure: Measure): number => toKilopascalPerMinute(measure)(1);

/**
 * A difference of temperatures in the measure of the report, from kelvin: a difference of one kelvin is one of 1.8 degrees Fahrenheit, without the 32 of readings.
 * Source: NIST Special Publication 811 (2008), appendix B.8 and B.9.
 */
export function temperatureDifferenceIn({ temperature }: ReportMeasures): (kelvin: number) => number {
  return temperature === 'F' ? (value) => rounded(value * 1.8) : (value) => value;
}

/** Twelve significant digits, so that a decimal factor leaves no tail. */
const rounded = (value: number): number => Number(value.toPrecision(12));
