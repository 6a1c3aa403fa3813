import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { run } from '../../pipeline/commands/main.ts';
import { runProgram } from './terminal.ts';

const scratch = mkdtempSync(join(tmpdir(), 'learn-'));
afterAll(() => rmSync(scratch, { recursive: true, force: true }));

let count = 0;
function folderOf(files: Record<string, string>): string {
  const folder = join(scratch, String(count++));
  for (const [file, content] of Object.entries(files)) {
    mkdirSync(dirname(join(folder, file)), { recursive: true });
    writeFileSync(join(folder, file), content);
  }
  return folder;
}

/** Runs the program with a person who answers: what was asked, and what was printed. */
async function runAnswered(argv: string[], answers: readonly string[]) {
  const asked: string[] = [];
  const left = [...answers];
  let out = '';
  const code = await run(argv, {
    print: (text) => {
      out += `${text}\n`;
    },
    printError: (text) => {
      out += `${text}\n`;
    },
    ask: async (question) => {
      asked.push(question);
      return left.shift();
    },
    progress: () => undefined,
    progressDone: () => undefined,
  });
  return { code, out, asked };
}

const two = (value: number): string => String(value).padStart(2, '0');
/** Days 1 to 12 of months 1 to 12 in no order: nothing tells day from month. */
const shuffled = Array.from({ length: 40 }, (_, at) => [((at * 7) % 12) + 1, ((at * 5) % 12) + 1]);
const AMBIGUOUS = [
  'Unit,Started,Program,Result,Pressure',
  ...shuffled.map(
    ([a, b], at) => `S1,${two(a!)}/${two(b!)}/2025 ${two(6 + (at % 12))}:00,Wrapped,Completed,2.1`,
  ),
  '',
].join('\n');

describe('learn', () => {
  it('asks only what the files can’t tell, and check and review work with the answers', async () => {
    const rows = Array.from({ length: 80 }, (_, at) => {
      const day = `2025-0${3 + Math.floor(at / 40)}-${two(1 + Math.floor((at % 40) / 2))}`;
      return at % 2 === 0
        ? `S1;${day} 06:10;${day} 06:40;Bowie-Dick;Completed`
        : `S1;${day} 08:10;${day} 08:55;Wrapped;Completed`;
    });
    const tests = rows
      .filter((_, at) => at % 2 === 0)
      .map((row) => `${row.split(';').slice(0, 2).join(';')};Pass`);
    const folder = folderOf({
      'cycles log.csv': ['Unit;Start;End;Program;Status', ...rows, ''].join('\n'),
      'bowie dick.csv': ['Unit;Read at;Result', ...tests, ''].join('\n'),
    });
    const { code, asked, out } = await runAnswered(['learn', folder], ['Europe/Nowhere', 'Europe/Berlin']);
    expect(code).toBe(0);
    expect(asked).toHaveLength(2);
    expect(asked[0]).toContain('time zone');
    expect(out).toContain('Look at the lines marked "likely"');
    const checked = await runProgram('check', folder);
    expect([checked.code, checked.err]).toEqual([0, '']);
    expect(checked.out).toMatch(/2025-03-01 06:10\s+-> start: 2025-03-01 06:10 \(Europe\/Berlin\)/);
    expect(checked.out).toContain('120 rows = 120 records + 0 duplicates + 0 rejected');
    const review = await runProgram('review', folder, '--month', '2025-03', '--out', join(folder, 'out'));
    expect([review.code, review.err]).toEqual([0, '']);
  });

  it('with --yes asks nothing, and what is open stops the next command instead of being decided', async () => {
    const folder = folderOf({ 'steriliser.csv': AMBIGUOUS });
    const { code, asked } = await runAnswered(['learn', folder, '--yes'], []);
    expect([code, asked]).toEqual([0, []]);
    const text = readFileSync(join(folder, 'site.yaml'), 'utf8');
    expect(text).toContain('zone: "?" # ? open');
    expect(text).toMatch(/dates: "\?" # \? open: .*one of dd\/MM\/yyyy HH:mm \| MM\/dd\/yyyy HH:mm/);
    expect(text).toMatch(/# exposure_pressure_kpa: .*measure: "\?"/);
    const checked = await runProgram('check', folder);
    expect(checked.code).toBe(1);
    expect(checked.err).toContain('must be a time zone by its IANA name');
    writeFileSync(join(folder, 'site.yaml'), text.replace('zone: "?"', 'zone: Europe/Berlin'));
    const again = await runProgram('check', folder);
    expect(again.code).toBe(1);
    expect(again.err).toContain('date pattern "?"');
  });

  it('takes the answer for an ambiguous date order', async () => {
    const folder = folderOf({ 'steriliser.csv': AMBIGUOUS });
    const { asked } = await runAnswered(['learn', folder, '--zone', 'Europe/Berlin'], ['dd/mm', '1', 'none']);
    expect(asked[0]).toMatch(/1 dd\/MM\/yyyy HH:mm\n {2}2 MM\/dd\/yyyy HH:mm/);
    const { out } = await runProgram('check', folder, '--json');
    const { totals, first_rows } = JSON.parse(out);
    expect(totals).toMatchObject({ rows: 40, rejected: 0 });
    expect(first_rows[0].fields[1]).toMatchObject({ field: 'start', raw: '01/01/2025 06:00' });
  });

  it('never overwrites a site file, and says what it can’t use', async () => {
    const folder = folderOf({ 'site.yaml': 'mine', 'a.csv': 'id,amount\n1,2\n3,4\n' });
    const taken = await runProgram('learn', folder, '--yes');
    expect([taken.code, taken.err.includes('must not exist yet')]).toEqual([1, true]);
    const nothing = await runProgram('learn', folder, '--yes', '--out', join(folder, 'new.yaml'));
    expect(nothing.code).toBe(1);
    expect(nothing.err).toContain(
      'must hold a table of records that are known, found none; a.csv holds columns of no record',
    );
    expect((await runProgram('learn', join(folder, 'none'))).code).toBe(1);
    expect((await runProgram('learn', folder, '--zone', 'Mars')).code).toBe(2);
  });

  it('knows the words that a site adds', async () => {
    const folder = folderOf({
      'words.yaml': 'headers: { unit: [Topf] }\nwords: { kind: { production: [Grossvater] } }\n',
      'cycles.csv':
        'Topf,Start,Program,Status\nA,2025-03-20 06:00,Grossvater,OK\nB,2025-03-21 06:00,Wrapped,OK\n',
    });
    expect((await runProgram('learn', folder, '--yes', '--zone', 'Europe/Berlin')).out).toContain(
      'unit <- "Topf" (certain)',
    );
    expect(JSON.parse((await runProgram('check', folder, '--json')).out).totals).toMatchObject({
      records: 2,
      rejected: 0,
    });
    writeFileSync(join(folder, 'words.yaml'), 'kopf: [x]\n');
    const bad = await runProgram('learn', folder, '--yes', '--out', join(folder, 'b.yaml'));
    expect([bad.code, bad.err.includes('words.yaml')]).toEqual([1, true]);
  });

  it('one file alone', async () => {
    const folder = folderOf({ 'a.csv': AMBIGUOUS, 'b.csv': AMBIGUOUS });
    await runProgram('learn', join(folder, 'b.csv'), '--yes');
    expect(readFileSync(join(folder, 'site.yaml'), 'utf8')).toMatch(/files: b\.csv/);
  });
});

describe('learn of several places', () => {
  const plain =
    'Unit,Started,Program,Result\nS1,2025-03-20 06:00,Wrapped,Completed\nS1,2025-03-21 06:00,Wrapped,Failed\n';

  it('looks at these files and folders and at nothing beside them', async () => {
    const folder = folderOf({ 'a/x.csv': plain, 'b/y.csv': plain, 'c/z.csv': plain, 'c/other.csv': plain });
    const { code } = await runProgram(
      'learn',
      join(folder, 'a'),
      join(folder, 'c', 'z.csv'),
      '--yes',
      '--zone',
      'Europe/Berlin',
      '--sites',
      'one',
    );
    expect(code).toBe(0);
    const text = readFileSync(join(folder, 'site.yaml'), 'utf8');
    expect(text).toMatch(/files: \[a\/x\.csv, c\/z\.csv\]/);
    expect(text).not.toMatch(/y\.csv|other/);
    expect(JSON.parse((await runProgram('check', folder, '--json')).out).totals.rows).toBe(4);
  });

  it('refuses what is not there, and another word for the sites', async () => {
    const folder = folderOf({ 'a.csv': plain });
    const gone = await runProgram('learn', folder, join(folder, 'none.csv'), '--yes');
    expect([gone.code, gone.err.includes('found nothing')]).toEqual([1, true]);
    expect((await runProgram('learn', folder, '--sites', 'many')).code).toBe(2);
    expect((await runProgram('check', folder, folder)).code).toBe(2);
  });
});

describe('check', () => {
  it('warns of columns that look as if they told of people, without showing them', async () => {
    const folder = folderOf({
      'site.yaml': 'sites: [{ zone: Europe/Berlin }]\n',
      'cycles.csv': [
        'unit,start,kind,outcome,abort_text,Helper,born,Patient ID',
        ...['Ada Example', 'Bo Sample', 'Cy Testcase'].map(
          (name, at) =>
            `S1,2025-03-0${at + 1} 06:00,production,completed,${name},${name},19${4 + at}1-02-03,77${at}`,
        ),
      ].join('\n'),
    });
    const { out } = await runProgram('check', folder, '--rows', '0');
    expect(out).toContain('column abort_text: looks like names; IT IS KEPT');
    expect(out).toContain('column Helper: looks like names; not kept');
    expect(out).toContain('column born: looks like dates of birth; not kept');
    expect(out).toContain('column Patient ID: looks like record numbers; not kept');
    expect(out).not.toContain('Ada');
    expect((await runProgram('check', folder, '--rows', 'x')).code).toBe(2);
  });
});
