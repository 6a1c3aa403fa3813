import { beforeAll, describe, expect, it } from 'vitest';
import { type ReportInput, writeReport } from '../../../pipeline/report/report.ts';
import type { ReportFile } from '../../../pipeline/report/report-file.ts';
import { driftOf } from '../fixtures/drift-parts.ts';
import { fleetInput } from '../fixtures/fleet.ts';
import { pagesOf } from '../fixtures/pages-of.ts';
import { pageTexts } from '../language/page-texts.ts';

const fleet = fleetInput(3, { drift: driftOf('A1', 'north') });
const input: ReportInput = { ...fleet, measures: { pressure: 'psi', temperature: 'F' } };
let files: ReportFile[];
let plain: ReportFile[];
beforeAll(async () => {
  files = await writeReport(input);
  plain = await writeReport(fleet);
}, 60_000);
const textOf = (of: readonly ReportFile[], path: string): string =>
  pageTexts(String(of.find((file) => file.path === path)!.content))
    .map(({ text }) => text)
    .join('\n');

describe('pages in psi and degrees Fahrenheit', () => {
  it('hold no value in kPa or K on the review and the pages of units', () => {
    for (const path of ['index.html', 'meeting.html', 'unit-A1.html', 'unit-A2.html', 'unit-A3.html']) {
      expect(textOf(files, path), path).not.toMatch(/\d[\s\u00a0](kPa\/min|K)(?![\p{L}])/u);
      expect(textOf(files, path).length).toBeGreaterThan(1000);
    }
    expect(textOf(plain, 'unit-A1.html')).toMatch(/\d kPa\/min/);
  });

  it('say the last leak test of a unit by the factor, beside its limit', () => {
    const { leak } = fleet.review.units.find((unit) => unit.unit === 'A1')!;
    // NIST Special Publication 811 (2008), appendix B.8: 1 psi = 6.894757 kPa.
    const psi = (kilopascal: number) => String(Number((kilopascal / 6.894757).toPrecision(3)));
    expect(textOf(files, 'unit-A1.html')).toContain(
      `${psi(leak.last!)} psi/min, limit ${psi(leak.limit)} psi/min`,
    );
  });

  it('are the same when the pages of units are drawn elsewhere, each with its neighbours', async () => {
    const elsewhere = await pagesOf({ ...input, hasInterval: input.interval !== undefined }, [
      'A1',
      'A2',
      'A3',
    ]);
    expect([...elsewhere]).toEqual(
      ['A1', 'A2', 'A3'].map((unit) => [
        unit,
        files.find((file) => file.path === `unit-${unit}.html`)!.content,
      ]),
    );
    expect(elsewhere.get('A2')).toMatch(/rel="prev">Previous: A1</);
    expect(elsewhere.get('A2')).toMatch(/rel="next">Next: A3</);
    expect(elsewhere.get('A3')).not.toMatch(/rel="next"/);
  });

  it('leave the data files as they are, but for the sentences of the next steps', () => {
    const data = (of: readonly ReportFile[]) =>
      of.filter(({ path }) => /\.(json|csv)$/.test(path) && path !== 'tables/next-steps.csv');
    expect(data(files)).toEqual(data(plain));
  });
});
