import type { Measure } from '../site/measures.ts';

/** What a header (or the row of measures under it) says of the unit of measure. */
export interface HeaderMeasure {
  temperature: 'C' | 'F' | undefined;
  pressure: 'kPa' | 'bar' | 'mbar' | 'psi' | 'mmHg' | 'inHg' | undefined;
  reference: 'absolute' | 'gauge' | 'vacuum' | undefined;
  per: 'per min' | 'per 10 min' | undefined;
  duration: 's' | 'min' | 'mm:ss' | 'hh:mm:ss' | undefined;
  /** A measure that the tool does not know, such as MPa. */
  unknown: string | undefined;
}

// A measure stands in brackets, after a comma, or as the last word.
const PRESSURES: readonly [RegExp, HeaderMeasure['pressure'], HeaderMeasure['reference']][] = [
  [/\b(?:m?bara|psia|kpaa)\b/, undefined, 'absolute'],
  [/\b(?:m?barg|psig|kpag)\b/, undefined, 'gauge'],
  [/mbar|hpa\b/, 'mbar', undefined],
  [/\bbar/, 'bar', undefined],
  [/kpa/, 'kPa', undefined],
  [/psi/, 'psi', undefined],
  [/mm\s?hg|\btorr\b|mmhg/, 'mmHg', undefined],
  [/in\.?\s?hg|po\.?\s?hg|pulg\.?\s?hg|"\s?hg|zoll\s?hg/, 'inHg', undefined],
  [/\babs|\(a\)|absolut/, undefined, 'absolute'],
  [/\bm?bar\s?a\b|\bkpa\s?a\b/, undefined, 'absolute'],
  [/\bm?bar\s?g\b|\bkpa\s?g\b/, undefined, 'gauge'],
  [/\bgauge|\bgau\b|\brel\b|relativ|überdruck|uberdruck|manom|\(g\)/, undefined, 'gauge'],
  [/\bvac|vakuum|\bvide|vacío|vacio/, undefined, 'vacuum'],
];

/** In a name of a leak a pressure before "min" is one a minute, elsewhere the lowest one. */
const LEAK = /leak|leck|fuite|fuga|rise|anstieg/;

/** "HoldBarA" and "EvacSec": a measure that is written on to a word; the "m" of "_mbar" is its own. */
const apart = (header: string): string =>
  header.replace(
    /(?<=\p{Ll})(?<!(?:^|\P{L})[mh])(?=(?:M?bar|Bar|MBar|KPa|Kpa|Psi|PSI|Sec|Secs|Mins|DegC|DegF)[AG]?$)/gu,
    ' ',
  );

export function measureOfHeader(header: string): HeaderMeasure {
  const text = apart(header.normalize('NFKC')).toLowerCase();
  const found: HeaderMeasure = {
    temperature: undefined,
    pressure: undefined,
    reference: undefined,
    per: undefined,
    duration: undefined,
    unknown: undefined,
  };
  for (const [expression, pressure, reference] of PRESSURES) {
    if (!expression.test(text)) continue;
    found.pressure ??= pressure;
    found.reference ??= reference;
  }
  if (/\bmpa\b/.test(text)) found.unknown = 'MPa';
  if (/°\s?f|º\s?f|fahrenheit|deg\.?\s?f\b|[([/,_ ]f[)\]]?$/.test(text)) found.temperature = 'F';
  else if (/°\s?c|º\s?c|celsius|deg\.?\s?c\b|grad c|[([/,_ ]c[)\]]?$/.test(text)) found.temperature = 'C';
  if (/10\s?m/.test(text)) found.per = 'per 10 min';
  else if (/(?:\/|per|pro|par|por|in|en)\s?(?:1\s)?min/.test(text)) found.per = 'per min';
  else if (LEAK.test(text) && /(?:kpa|hpa|bar|psi|hg|torr)[ _]*p?[ _]*min$/.test(text)) found.per = 'per min';
  if (/\bh{1,2}:mm:ss/.test(text)) found.duration = 'hh:mm:ss';
  else if (/\bm{1,2}:ss/.test(text)) found.duration = 'mm:ss';
  else if (/[([,_/ ](?:s|sec|secs|seconds|sek|sekunden|seg|segundos|secondes|s\.)[)\]]?$/.test(text))
    found.duration = 's';
  else if (
    /[([,_/](?:min|mins|minutes|minuten|minutos)\.?[)\]]?$/.test(text) ||
    /\s(?:mins|minutes|minuten|minutos)$/.test(text)
  )
    found.duration = 'min';
  return found;
}

/** A header without its unit of measure, which says nothing of what the column holds. */
export function withoutMeasure(header: string): string {
  const bare = apart(header)
    .replace(/[([{][^)\]}]*[)\]}]/g, ' ')
    .replace(/[,/]?\s*(?:°|º)\s?[CF]\b/giu, ' ')
    .replace(
      /[\s,_/]+(?:kpa|mbar|hpa|bar|psi|mmhg|inhg|torr|mpa|m?bara|m?barg|kpaa|kpag|psia|psig|[sh]|sec|secs|sek|seg|[cf]|abs|rel|gauge|mm:ss|hh:mm:ss)\.?(?=$|[\s,/_])/giu,
      ' ',
    )
    .replace(/[\s,_]*(?:\/|per|pro|par|in)\s*(?:10\s)?min\.?$/iu, ' ')
    .replace(/\s+/g, ' ')
    .trim();
  return bare === '' ? header : bare;
}

/** The measures of a family that agree with what the header says. */
export function agreeing(measures: readonly Measure[], said: HeaderMeasure): Measure[] {
  return measures.filter((measure) => {
    const [unit = '', ...rest] = measure.split(' ');
    const reference = rest.join(' ');
    if (said.pressure !== undefined && unit !== said.pressure) return false;
    return said.reference === undefined || reference === said.reference;
  });
}
