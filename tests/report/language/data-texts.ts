import type { ReportInput } from '../../../pipeline/report/report.ts';

/** Fields whose texts are names, codes or cells of the site's own, or codes of settings. */
const DATA_FIELDS = new Set([
  'unit',
  'site',
  'id',
  'name',
  'scope',
  'source',
  'file',
  'sheet',
  'column',
  'value',
  'default',
  'text',
  'organisation',
  'zone',
  'sha256',
  'version',
  'point',
  'measure',
  'currency',
  'units_otherwise',
  'units_in_use',
  'action',
  'role',
  'determinand',
]);
/** Files of the report itself, by name. */
const OWN_FILES = [
  'review.json',
  'review.schema.json',
  'problems.csv',
  'tables',
  'review.xlsx',
  'next-steps.csv',
];

/** Every text that the records or the site brought in, longest first. */
export function dataOf({ review, interval }: ReportInput): string[] {
  const found = new Set(OWN_FILES);
  const walk = (value: unknown, field: string): void => {
    if (typeof value === 'string') {
      if (DATA_FIELDS.has(field) && value !== '') found.add(value);
    } else if (Array.isArray(value)) for (const item of value) walk(item, field);
    else if (typeof value === 'object' && value !== null)
      for (const [name, inner] of Object.entries(value)) walk(inner, name);
  };
  walk(review, '');
  walk(interval, '');
  return [...found].toSorted((a, b) => b.length - a.length);
}

const patterns = new WeakMap<readonly string[], RegExp>();

/** A text without names and cells of the records: whole words, so that a short name takes nothing out of a longer word. */
export function withoutData(text: string, data: readonly string[]): string {
  let pattern = patterns.get(data);
  if (!pattern) {
    const names = data.map((name) => name.replace(/[.*+?^${}()|[\]\\]/g, '\\$&')).join('|');
    pattern = new RegExp(`(?<![\\p{L}\\p{N}])(?:${names})(?![\\p{L}\\p{N}])`, 'gu');
    patterns.set(data, pattern);
  }
  // Names in braces are places for values.
  return text.replace(/\{\w+\}/g, '').replace(pattern, '');
}
