import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { readExports } from '../../pipeline/ingest/read-exports.ts';
import { learn } from '../../pipeline/learn/learn.ts';
import type { Proposal } from '../../pipeline/learn/proposal.ts';
import { openQuestions } from '../../pipeline/learn/questions.ts';
import { loadVocabulary } from '../../pipeline/learn/vocabulary.ts';
import { scalar, writeSiteFile } from '../../pipeline/learn/write-site-file.ts';
import { readSiteFile } from '../../pipeline/site/read-site-file.ts';
import { type Files, withFolder } from '../ingest/read-folder.ts';
import { workbook } from '../ingest/workbook.ts';

const vocabulary = loadVocabulary();
const learned = (files: Files): Promise<Proposal> =>
  withFolder(files, (folder) => learn(folder, { vocabulary, zone: 'Europe/Berlin' }));
const two = (value: number): string => String(value).padStart(2, '0');
const TABLE = [
  'Unit,Started,Program,Result,Alarm text',
  ...Array.from({ length: 30 }, (_, at) => `S1,2025-03-${two(at + 1)} 06:00,Wrapped,Completed,`),
];

describe('learning from input made to harm', () => {
  it('random bytes never crash it', async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.uint8Array({ maxLength: 3000 }),
        fc.constantFrom('a.csv', 'a.xlsx', 'a.zip', 'a.csv.gz', 'a.txt'),
        async (bytes, name) => {
          const proposal = await learned({ [name]: bytes });
          expect(proposal.sources).toEqual([]);
          expect(parse(writeSiteFile(proposal))).toMatchObject({ sources: [] });
        },
      ),
      { numRuns: 80, seed: 4 },
    );
  });

  it('bytes changed anywhere in a good file never crash it, and give a site file that is YAML', async () => {
    const good = Buffer.from(TABLE.join('\n'));
    await fc.assert(
      fc.asyncProperty(
        fc.array(fc.tuple(fc.nat(good.length - 1), fc.nat(255)), { maxLength: 12 }),
        fc.nat(good.length),
        async (changes, cut) => {
          const bytes = Buffer.from(good);
          for (const [at, value] of changes) bytes[at] = value;
          expect(
            parse(writeSiteFile(await learned({ 'a.csv': bytes.subarray(0, bytes.length - cut) }))),
          ).toHaveProperty('sites');
        },
      ),
      { numRuns: 80, seed: 5 },
    );
  });

  it('any text as a value of YAML is that text again', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 30 }), (text) => {
        expect(parse(`a: ${scalar(text)}`)).toEqual({ a: text });
      }),
      { numRuns: 500, seed: 6 },
    );
    for (const text of [
      'yes',
      'null',
      '1e3',
      '2025-03-01',
      '- a',
      '# a',
      'a: b',
      '*x',
      '&x',
      '!t',
      '{',
      "'",
      '~',
      '',
      ' a ',
      'a #b',
      'on',
      '\u2028',
      '\ud800',
    ])
      expect(parse(`a: ${scalar(text)}`)).toEqual({ a: text });
  });

  it('headers, words, names and samples can’t break out of the site file or change objects', async () => {
    const evil = ['__proto__', 'constructor', '"}\n  - zone: Mars #', 'x\r\nrules: {}', '=cmd()', '<script>'];
    const quoted = evil.map((text) => `"${text.replaceAll('"', '""')}"`);
    const header = `Unit,Started,Program,Result,${quoted.join(',')}`;
    const rows = Array.from(
      { length: 20 },
      (_, at) => `S${at % 2},2025-03-${two(at + 1)} 06:00,${quoted[at % 6]},Completed,${quoted.join(',')}`,
    );
    const proposal = await learned({ '#evil: {name}.csv': [header, ...rows, ''].join('\n') });
    const text = writeSiteFile(proposal);
    const site = parse(text);
    expect(Object.keys(site)).toEqual(['sites', 'sources']);
    expect(site.sites).toEqual([{ zone: 'Europe/Berlin' }]);
    expect(site.sources).toHaveLength(1);
    expect(site.sources[0].files).toBe('#evil: {name}.csv');
    expect(({} as Record<string, unknown>).x).toBeUndefined();
    for (const question of openQuestions(proposal))
      expect(question.answer(proposal, '__proto__')).toBeUndefined();
  });

  it('very many columns, very long cells and very many words take no more than seconds', async () => {
    const many = Array.from({ length: 20_000 }, (_, at) => `column ${at}`).join(',');
    const long = 'x'.repeat(900_000);
    const began = performance.now();
    await learned({
      'many.csv': [many, ...Array.from({ length: 5 }, () => '1,'.repeat(19_999))].join('\n'),
      'long.csv': [`Unit,Started,Program,${long}`, ...TABLE.slice(1, 4).map((row) => `${row}${long}`)].join(
        '\n',
      ),
      'words.csv': [
        'Unit,Started,Program,Result',
        ...Array.from({ length: 5000 }, (_, at) => `U${at},2025-03-01 06:00,p${at},r${at}`),
      ].join('\n'),
    });
    expect(performance.now() - began).toBeLessThan(30_000);
  }, 60_000);

  it('entities of a workbook stay text', async () => {
    const file = await workbook([
      {
        name: 'A',
        rows: TABLE.map((line, at) => [
          ...line.split(',').slice(0, 4),
          at === 0 ? 'Alarm text' : '&xxe; <!ENTITY x "y">',
        ]),
      },
    ]);
    const [source] = (await learned({ 'cycles.xlsx': file })).sources;
    expect(source?.columns.find(({ field }) => field === 'abort_text')?.samples).toEqual([
      '&xxe; <!ENTITY x "y">',
    ]);
  });
});

describe('what is learned reads what was written', () => {
  const style = fc.record({
    delimiter: fc.constantFrom(',', ';', '\t', '|'),
    preamble: fc.nat(3),
    dates: fc.constantFrom('iso', 'german', 'american'),
    lineEnd: fc.constantFrom('\n', '\r\n'),
    quoted: fc.boolean(),
    language: fc.constantFrom(
      ['Unit', 'Started', 'Program', 'Result', 'Wrapped', 'Completed'],
      ['Gerät', 'Beginn', 'Programm', 'Ergebnis', 'Instrumente', 'abgebrochen'],
      ['Appareil', 'Début', 'Programme', 'Résultat', 'Textile', 'Terminé'],
      ['Equipo', 'Inicio', 'Programa', 'Resultado', 'Textil', 'Abortado'],
    ),
  });
  it('in any style', async () => {
    await fc.assert(
      fc.asyncProperty(
        style,
        fc.integer({ min: 3, max: 40 }),
        async ({ delimiter, preamble, dates, lineEnd, quoted, language }, count) => {
          const [unit, start, kind, outcome, ...words] = language;
          const cell = (text: string): string => (quoted ? `"${text}"` : text);
          const days = Array.from({ length: count }, (_, at) => ({
            month: 3 + Math.floor(at / 28),
            day: 28 - (at % 28),
            minute: at % 60,
          }));
          const time = ({ month, day, minute }: (typeof days)[number]): string =>
            dates === 'iso'
              ? `2025-${two(month)}-${two(day)} 06:${two(minute)}`
              : dates === 'german'
                ? `${two(day)}.${two(month)}.2025 06:${two(minute)}`
                : `${month}/${day}/2025 6:${two(minute)} AM`;
          const lines = [
            ...Array.from({ length: preamble }, (_, at) => `Report ${at}`),
            [unit!, start!, kind!, outcome!].map(cell).join(delimiter),
            ...days.map((day) => ['S1', time(day), words[0]!, words[1]!].map(cell).join(delimiter)),
            '',
          ];
          await withFolder({ 'a.csv': lines.join(lineEnd) }, async (folder) => {
            const proposal = await learn(folder, { vocabulary, zone: 'Europe/Berlin' });
            expect(openQuestions(proposal).map(({ about }) => about)).toEqual([]);
            const { records, problems } = await readExports(
              readSiteFile(writeSiteFile(proposal), 'site.yaml'),
              folder,
            );
            expect(problems).toEqual([]);
            const starts = records.cycles
              .map((cycle) => new Date(cycle.start).toISOString().slice(0, 10))
              .sort();
            expect(starts).toEqual(days.map(({ month, day }) => `2025-${two(month)}-${two(day)}`).sort());
          });
        },
      ),
      { numRuns: 40, seed: 7 },
    );
  }, 60_000);
});
