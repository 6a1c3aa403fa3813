import { describe, expect, it } from 'vitest';
import { BERLIN, brief, cyclesFrom, HEADER, ROW, readFiles } from './read-folder.ts';

const MB = 1_000_000;

describe('input made to harm', () => {
  it('can’t fill memory with one endless line', async () => {
    const piece = Buffer.alloc(MB, 'x');
    let highest = 0;
    const { records, problems, files } = await readFiles({ 'cycles.csv': '' }, BERLIN, {
      open: async function* () {
        yield Buffer.from(`${HEADER}\n${ROW}\n`);
        for (let count = 0; count < 200; count++) {
          yield piece;
          if (count % 20 === 0) highest = Math.max(highest, process.memoryUsage().heapUsed);
        }
        yield Buffer.from(`\n${ROW.replace('17', '18')}\n`);
      },
    });
    expect(records.cycles.map(({ cycle_number }) => cycle_number)).toEqual([17, 18]);
    expect(problems.map(brief)).toEqual(['too_long row 3 ']);
    expect(files[0]).toMatchObject({
      bytes: 200 * MB + Buffer.byteLength(`${HEADER}\n${ROW}\n\n${ROW}\n`),
      rows: 3,
    });
    expect(highest).toBeLessThan(400 * MB);
  });

  it('can’t fill memory with one endless quoted cell', async () => {
    const piece = Buffer.from(`${'y,'.repeat(50)}\n`.repeat(5000));
    const { records, problems, files } = await readFiles({ 'cycles.csv': '' }, BERLIN, {
      open: async function* () {
        yield Buffer.from(`${HEADER}\n${ROW}"open\n`);
        for (let count = 0; count < 4; count++) yield piece;
        yield Buffer.from(ROW);
      },
    });
    expect(records.cycles).toHaveLength(1);
    expect(files[0]!.rows).toBe(20_002);
    expect(problems[0]).toMatchObject({ code: 'quote', row: 2 });
    expect(new Set(problems.slice(1).map(({ code }) => code))).toEqual(new Set(['long_row']));
  });

  it('can’t change objects by the names of columns, units and words', async () => {
    const header = `${HEADER},__proto__,constructor,toString`;
    const names = ['__proto__', 'constructor', 'hasOwnProperty'];
    const rows = names.map((name) => `${ROW.replace('S1', name)}text,x,{},y`);
    const { records, problems } = await readFiles({ 'cycles.csv': [header, ...rows].join('\n') });
    expect(problems).toEqual([]);
    expect(records.cycles.map(({ unit }) => unit)).toEqual(names);
    expect(({} as Record<string, unknown>).x).toBeUndefined();
    expect(Object.keys(records.cycles[0]!)).not.toContain('__proto__');
  });

  it('keeps formulas, markup and entities as the text that they are', async () => {
    const texts = [
      "=cmd|'/c calc'!A0",
      '@SUM(1+1)',
      '<script>alert(1)</script>',
      '&lt;b&gt; &#65;',
      '\u202Egnp.exe',
      '{{7*7}}',
    ];
    const rows = texts.map((text, at) => `${ROW.replace('17', String(at))}"${text}"`);
    const { records, problems } = await readFiles({ 'cycles.csv': [HEADER, ...rows].join('\n') });
    expect(problems).toEqual([]);
    expect(records.cycles.map(({ abort_text }) => abort_text)).toEqual(texts);
  });

  it('is cut to 120 characters in problems, with no half character at the end', async () => {
    const { problems } = await readFiles({
      'cycles.csv': `${HEADER}\n${ROW.replace('95', '😀'.repeat(100))}`,
    });
    expect(problems[0]!.value).toHaveLength(119);
    expect(problems[0]!.value).toBe(`${'😀'.repeat(59)}…`);
  });

  it('may have very many columns', async () => {
    const many = 50_000;
    const header = `${Array.from({ length: many }, (_, at) => `c${at}`).join(',')},${HEADER}`;
    const { records, problems } = await readFiles({ 'cycles.csv': `${header}\n${','.repeat(many)}${ROW}\n` });
    expect(problems).toEqual([]);
    expect(records.cycles).toHaveLength(1);
  });

  it('may hold thousands of cycles in one repeated hour', async () => {
    const rows = Array.from({ length: 5000 }, (_, at) => `S1,2025-10-26 02:30,,production,completed,${at},,`);
    const { records } = await readFiles({ 'cycles.csv': [HEADER, ...rows].join('\n') });
    expect(records.cycles).toHaveLength(5000);
    expect(records.cycles.every(({ time_mark }) => time_mark === 'ambiguous')).toBe(true);
  });

  it('can’t name files outside the folder', async () => {
    const { problems, files } = await readFiles(
      { 'a.csv': '' },
      cyclesFrom({ files: ['../**', '/etc/*', '**/../*'] }),
    );
    expect(files).toEqual([]);
    expect(problems.map(({ code }) => code)).toEqual(['no_file', 'no_file', 'no_file']);
  });
});
