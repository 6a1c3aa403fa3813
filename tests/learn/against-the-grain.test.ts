import { describe, expect, it } from 'vitest';
import { learn } from '../../pipeline/learn/learn.ts';
import { openQuestions } from '../../pipeline/learn/questions.ts';
import { loadVocabulary } from '../../pipeline/learn/vocabulary.ts';
import { withFolder } from '../ingest/read-folder.ts';

const vocabulary = loadVocabulary();
const day = (at: number): string => `2025-03-${String((at % 28) + 1).padStart(2, '0')}`;
const table = (header: string, row: (at: number) => string): string =>
  [header, ...Array.from({ length: 40 }, (_, at) => row(at)), ''].join('\n');
const learnt = (name: string, text: string) =>
  withFolder({ [name]: text }, (folder) => learn(folder, { vocabulary, zone: 'Europe/Berlin' }));

describe('tables that would be understood the wrong way round', () => {
  it.each([
    ['Missed?', 'cleaning.csv', 'Date,Sterilizer,Task', 'Chamber', 'state'],
    ['Nicht erledigt', 'cleaning.csv', 'Date,Sterilizer,Task', 'Chamber', 'state'],
    ['Non fait', 'cleaning.csv', 'Date,Sterilizer,Task', 'Chamber', 'state'],
  ])('yes and no under "%s" are asked', async (header, file, first, task, field) => {
    const { sources } = await learnt(
      file,
      table(`${first},${header}`, (at) => `${day(at)},S1,${task},${at % 5 ? 'N' : 'Y'}`),
    );
    expect(sources[0]!.words[field]!.map(({ text, word }) => [text, word])).toEqual([
      ['Y', undefined],
      ['N', undefined],
    ]);
  });

  it('a test that says whether it failed', async () => {
    const { sources } = await learnt(
      'bowie dick.csv',
      table('Date,Sterilizer,Bowie Dick failed', (at) => `${day(at)},S1,${at % 15 ? 'No' : 'Yes'}`),
    );
    expect(sources[0]!.words.result!.every(({ word }) => word === undefined)).toBe(true);
  });

  it('a washer is no sterilizer: asked, and left out where the answer is none', async () => {
    const byName = await learnt(
      'washer.csv',
      table('Washer,Start,Program,Result', (at) => `W1,${day(at)} 06:${10 + at},Instruments,OK`),
    );
    const byTemperature = await learnt(
      'a.csv',
      table(
        'Machine,Start,Program,Result,Temp max',
        (at) => `W1,${day(at)} 06:${10 + at},Instruments,OK,93.${at % 9}`,
      ),
    );
    const byTemperatureAndMeasure = await learnt(
      'a.csv',
      table(
        'Machine,Start,Program,Result,Temp max (°C)',
        (at) => `W1,${day(at)} 06:${10 + at},Instruments,OK,93.${at % 9}`,
      ),
    );
    for (const proposal of [byName, byTemperature, byTemperatureAndMeasure]) {
      const [question] = openQuestions(proposal);
      expect(question?.about).toMatch(/: kind$/);
      expect(question?.answer(proposal, 'none')?.sources).toEqual([]);
      expect(question?.answer(proposal, 'cycles')?.sources[0]?.kind.value).toBe('cycles');
    }
  });

  describe('one column that speaks of another device', () => {
    const cycles = (column: string, hot: number, kind = 'Bowie-Dick') =>
      table(
        `Sterilizer,Start,Program,Result,Temp max (°C),Chamber pressure (kPa),${column}`,
        (at) =>
          `S1,${day(at)} 06:${10 + at},${at % 5 ? 'Wrapped' : kind},OK,${hot}.${at % 9},${hot > 130 ? 31 : 17}${at % 9},${at % 4}`,
      );
    const kindOf = async (name: string, text: string) => (await learnt(name, text)).sources[0]?.kind;

    it('leaves cycles in steam likely', async () => {
      const kind = await kindOf('cycles.csv', cycles('Incubator slot', 134));
      expect([kind?.value, kind?.confidence]).toEqual(['cycles', 'likely']);
      expect(kind?.why).toContain('incubator');
    });

    it.each([
      ['at 93 °C', 'cycles.csv', cycles('Incubator slot', 93)],
      ['where two do', 'cycles.csv', cycles('Incubator slot,Washer basket', 134)],
      ['where the title does', 'washer.csv', cycles('Basket', 134)],
      [
        'where nothing shows that it is steam',
        'cycles.csv',
        table(
          'Sterilizer,Start,Program,Result,Incubator slot',
          (at) => `S1,${day(at)} 06:${10 + at},Wrapped,OK,${at % 4}`,
        ),
      ],
    ])('%s it stays a question', async (_, name, text) => {
      expect((await kindOf(name, text))?.confidence).toBe('open');
    });
  });

  it('remarks beside a cycle are not surely what the control printed', async () => {
    const { sources } = await learnt(
      'cycles.csv',
      table(
        'Unit,Start,Program,Result,Comments',
        (at) => `S1,${day(at)} 06:${10 + at},Wrapped,OK,late shift`,
      ),
    );
    expect(sources[0]!.columns.find(({ field }) => field === 'abort_text')?.match.confidence).toBe('likely');
  });

  it('numbers that count up are the cycle number whatever they are called; a line number in a file of two units is not', async () => {
    const rows = (number: (at: number) => number) =>
      table(
        'Load #,Unit,Start,Program,Result',
        (at) => `${number(at)},S${at % 2},${day(at)} 06:${10 + at},Wrapped,OK`,
      );
    const found = async (number: (at: number) => number) =>
      (await learnt('cycles.csv', rows(number))).sources[0]!.columns.find(
        ({ field }) => field === 'cycle_number',
      );
    expect((await found((at) => 4100 + 700 * (at % 2) + Math.floor(at / 2)))?.match.confidence).toBe(
      'likely',
    );
    expect(await found((at) => at + 1)).toBeUndefined();
    expect(await found((at) => (at * 37) % 91)).toBeUndefined();
  });

  it.each([
    ['Planned date', 'Date done', 'Sterilizer', 'Task'],
    ['Geplant am', 'Durchgeführt am', 'Gerät', 'Aufgabe'],
    ['Date prévue', 'Date de réalisation', 'Stérilisateur', 'Tâche'],
    ['Fecha programada', 'Fecha de ejecución', 'Equipo', 'Tarea'],
  ])('a day that was planned (%s) is none on which it was done', async (planned, done, unit, task) => {
    const both = await learnt(
      'cleaning.csv',
      table(`${planned},${done},${unit},${task}`, (at) => `${day(at)},${day(at + 1)},S1,Filter`),
    );
    const time = ({ sources }: Awaited<ReturnType<typeof learnt>>) =>
      sources[0]?.columns.find(({ field }) => field === 'time');
    expect(time(both)?.from).toEqual({ headers: [done] });
    const alone = await learnt(
      'cleaning.csv',
      table(`${planned},${unit},${task}`, (at) => `${day(at)},S1,Filter`),
    );
    expect(time(alone)?.match.confidence ?? 'open').toBe('open');
  });

  it('a column whose words are not those of its field is not surely it', async () => {
    const { sources } = await learnt(
      'cycles.csv',
      table('Unit,Start,Program,Result,Status', (at) => `S1,${day(at)} 06:${10 + at},Wrapped,OK,blue`),
    );
    expect(sources[0]!.columns.find(({ field }) => field === 'outcome')?.from).toEqual({
      headers: ['Result'],
    });
    const other = await learnt(
      'cycles.csv',
      table(
        'Unit,Start,Program,Result',
        (at) => `S1,${day(at)} 06:${10 + at},Wrapped,${at % 2 ? 'blue' : 'grey'}`,
      ),
    );
    expect(other.sources[0]!.columns.find(({ field }) => field === 'outcome')?.match.confidence).toBe(
      'likely',
    );
  });
});
