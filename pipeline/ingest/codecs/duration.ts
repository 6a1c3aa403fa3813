import type { Measure } from '../../site/measures.ts';
import { rounded } from './conversions.ts';
import type { DecimalReader } from './decimal.ts';

/** Seconds of a length of time written in the measure; undefined where the text doesn't fit. The first part of mm:ss and hh:mm:ss may exceed 59. */
export function durationReader(measure: Measure, decimal: DecimalReader): DecimalReader {
  if (measure === 'mm:ss' || measure === 'hh:mm:ss') {
    const parts = measure === 'mm:ss' ? 2 : 3;
    return (whole, from = 0, to = whole.length) => {
      const texts = whole.slice(from, to).split(':');
      if (texts.length !== parts) return undefined;
      let seconds = 0;
      for (const [index, part] of texts.entries()) {
        const last = index === parts - 1;
        if (!(last ? /^\d{1,2}(?:[.,]\d+)?$/ : /^\d{1,4}$/).test(part)) return undefined;
        const value = last ? decimal(part) : Number(part);
        if (value === undefined || (index > 0 && value >= 60)) return undefined;
        seconds = seconds * 60 + value;
      }
      return seconds;
    };
  }
  if (measure === 'min') {
    return (text, from, to) => {
      const minutes = decimal(text, from, to);
      return minutes === undefined ? undefined : rounded(minutes * 60);
    };
  }
  return decimal;
}
