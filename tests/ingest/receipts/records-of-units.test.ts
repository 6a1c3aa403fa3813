import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { FileColumns } from '../../../pipeline/ingest/file-columns.ts';
import type { Inputs } from '../../../pipeline/ingest/read-jobs.ts';
import { type Part, recordsOfParts } from '../../../pipeline/ingest/receipts/records-of-parts.ts';
import { recordsOfUnits } from '../../../pipeline/ingest/receipts/records-of-units.ts';
import type { Settlement } from '../../../pipeline/ingest/settlement.ts';
import { recordFields } from '../../../pipeline/site/records.ts';

const KIND = 'air_removal_tests';
const UNITS = ['Q1', 'Q2', 'Q3'];
const RESULTS = ['pass', 'fail'];
const MARKS = ['time', 'day'];
const NONE = -1;
const inputs = { site: { declared: {} } } as unknown as Inputs;

const row = (times: number) =>
  fc.record({
    unit: fc.nat(UNITS.length - 1),
    time: fc.nat(times),
    result: fc.nat(RESULTS.length - 1),
    mark: fc.nat(MARKS.length - 1),
    cycle_number: fc.oneof(fc.constant(Number.NaN), fc.nat(3)),
    note: fc.constantFrom(NONE, 0),
  });
/** Files of which the rows often are of one time, or hardly ever. */
const files = fc.constantFrom(20, 1e9).chain((times) => fc.array(fc.array(row(times)), { maxLength: 4 }));

/** One file as columns, with a file of the history behind it or not. */
function partOf(
  rows: readonly (ReturnType<typeof row> extends fc.Arbitrary<infer Row> ? Row : never)[],
  at: number,
): Part {
  const codes = (of: (one: (typeof rows)[number]) => number): Int32Array => Int32Array.from(rows, of);
  const columns: FileColumns = {
    kind: KIND,
    read: { source: 'sheet', file: `${at}.csv`, sheet: null } as FileColumns['read'],
    problems: [],
    count: rows.length,
    rows: Float64Array.from(rows, (_, index) => index + 2),
    columns: [
      ['unit', { type: 'words', codes: codes((of) => of.unit), words: UNITS }],
      ['time', { type: 'number', values: Float64Array.from(rows, (of) => of.time) }],
      ['result', { type: 'words', codes: codes((of) => of.result), words: RESULTS }],
      ['cycle_number', { type: 'number', values: Float64Array.from(rows, (of) => of.cycle_number) }],
      ['note', { type: 'words', codes: codes((of) => of.note), words: ['a note'] }],
      ['time_mark', { type: 'words', codes: codes((of) => of.mark), words: MARKS }],
    ],
    choices: [],
  };
  const units = [...new Set(rows.map((of) => UNITS[of.unit]!))];
  return {
    part: at,
    sequence: 1000 * at,
    sha256: '',
    kind: KIND,
    kept: undefined,
    columns,
    units,
  } as unknown as Part;
}

const FIELDS = [...recordFields(KIND).map(({ name }) => name), 'time_mark', 'origin'];
const plain = (record: object): unknown =>
  FIELDS.map((name) => [name, (record as Record<string, unknown>)[name]]);

function totals({ counts, contradictions }: Settlement): unknown {
  const sums = new Map<number, [number, number]>();
  for (const [part, { records, duplicates }] of counts) {
    const [a, b] = sums.get(part) ?? [0, 0];
    sums.set(part, [a + records, b + duplicates]);
  }
  return [[...sums].sort(([a], [b]) => a - b), contradictions];
}

describe('records that are taken unit by unit', () => {
  it('are those that are taken at once, whether or not something is to be decided between them', async () => {
    await fc.assert(
      fc.asyncProperty(files, async (of) => {
        const parts = of.map(partOf);
        const taken = recordsOfUnits(parts, inputs, '');
        const records: unknown[] = [];
        for (const unit of UNITS) records.push(...(await taken.take(unit, [KIND]))[KIND].map(plain));
        const atOnce = await recordsOfParts(parts, inputs, '', new Set(UNITS));
        expect(records).toEqual(atOnce.records[KIND].map(plain));
        expect(totals(taken.settlement)).toEqual(totals(atOnce.settlement));
      }),
      { numRuns: 300 },
    );
  });
});
