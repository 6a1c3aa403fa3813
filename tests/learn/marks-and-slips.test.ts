import { describe, expect, it } from 'vitest';
import { composedWord, deniedPart } from '../../pipeline/learn/compose-word.ts';
import { guessDates } from '../../pipeline/learn/guess-dates.ts';
import { canBeDryVacuum } from '../../pipeline/learn/guess-measure.ts';
import { measureOfHeader, withoutMeasure } from '../../pipeline/learn/header-measure.ts';
import { learn } from '../../pipeline/learn/learn.ts';
import { byLegend, legendOf } from '../../pipeline/learn/legend.ts';
import { mapWords } from '../../pipeline/learn/map-words.ts';
import type { ProposedSource } from '../../pipeline/learn/proposal.ts';
import { loadVocabulary } from '../../pipeline/learn/vocabulary.ts';
import type { RecordKind } from '../../pipeline/site/vocabulary.ts';
import {
  CLEANING_STATES,
  CLEANING_TASKS,
  CYCLE_KINDS,
  CYCLE_OUTCOMES,
  SERVICE_KINDS,
  TEST_RESULTS,
} from '../../pipeline/site/vocabulary.ts';
import { withFolder } from '../ingest/read-folder.ts';

const vocabulary = loadVocabulary();

const meant = (kind: RecordKind, field: string, texts: readonly string[], options: readonly string[]) =>
  Object.fromEntries(
    mapWords(kind, field, { words: new Map(texts.map((text) => [text, 1])) }, options, vocabulary).map(
      ({ text, word, confidence }) => [text, [word, confidence]],
    ),
  );

const sourcesOf = (name: string, lines: readonly string[]): Promise<readonly ProposedSource[]> =>
  withFolder({ [name]: `${lines.join('\n')}\n` }, async (folder) => {
    const { sources } = await learn(folder, { vocabulary, zone: 'Europe/Berlin' });
    return sources;
  });

const two = (number: number): string => String(number).padStart(2, '0');

describe('one slip among many dates', () => {
  const unclear = Array.from({ length: 40 }, (_, at) => `${two((at % 12) + 1)}.10.2024`);

  it('does not put the month first where full stops stand between', () => {
    const found = guessDates([...unclear, '07.13.2024']);
    expect([found?.value, found?.confidence]).toEqual(['dd.MM.yyyy', 'likely']);
  });

  it('is believed where nothing speaks against it, and never as certain', () => {
    const slashes = unclear.map((text) => text.replaceAll('.', '/'));
    const found = guessDates([...slashes, '10/13/2024']);
    expect([found?.value, found?.confidence]).toEqual(['MM/dd/yyyy', 'likely']);
    expect(found?.options).toContain('dd/MM/yyyy');
  });

  it('is no slip where several rows say so', () => {
    const found = guessDates([...unclear, '13.10.2024', '14.10.2024', '15.10.2024']);
    expect([found?.value, found?.confidence]).toEqual(['dd.MM.yyyy', 'certain']);
  });

  it('a day is not taken for a year', () => {
    const texts = ['15/07/24', '16/07/24', '17/07/24', '18/07/24'].flatMap((text) => [text, text, text]);
    const found = guessDates(texts);
    expect([found?.value, found?.confidence]).toEqual(['dd/MM/yy', 'likely']);
  });
});

describe('marks of a sheet', () => {
  it('a ring beside crosses is a question, and the cross no longer certain', () => {
    expect(meant('cleanings', 'state', ['x', 'o'], CLEANING_STATES)).toEqual({
      x: ['done', 'likely'],
      o: [undefined, 'open'],
    });
  });

  it('a ring alone, or a letter for yes beside one for no', () => {
    expect(meant('cleanings', 'state', ['o'], CLEANING_STATES)).toEqual({ o: ['done', 'likely'] });
    expect(meant('cleanings', 'state', ['o', 'n'], CLEANING_STATES)).toEqual({
      o: ['done', 'certain'],
      n: ['missed', 'certain'],
    });
  });

  it('a legend above the header rules', () => {
    const legend = legendOf(['Reinigungsplan November 2024', 'x = gemacht, o = vergessen, - = kein Betrieb']);
    expect([...legend]).toEqual([
      ['x', 'gemacht'],
      ['o', 'vergessen'],
      ['-', 'kein Betrieb'],
    ]);
    const words = mapWords(
      'cleanings',
      'state',
      {
        words: new Map([
          ['x', 9],
          ['o', 2],
          ['-', 3],
        ]),
      },
      CLEANING_STATES,
      vocabulary,
    );
    expect(byLegend(words, legend, vocabulary).map(({ word }) => word)).toEqual([
      'done',
      'missed',
      'not_due',
    ]);
    const turned = byLegend(words, legendOf(['x: not done; o: done']), vocabulary);
    expect(turned.map(({ word }) => word)).toEqual(['missed', 'done', undefined]);
    const strange = byLegend(words, legendOf(['x = see page two']), vocabulary);
    expect(strange[0]).toMatchObject({ word: undefined, confidence: 'open' });
  });

  it('times and titles are no legend', () => {
    expect([...legendOf(['Printed 06:30 by line 4', 'Unit 2', 'Ratio 1:2'])]).toEqual([]);
  });
});

describe('words by their stems', () => {
  it('are likely at most', () => {
    expect(meant('cycles', 'kind', ['LIQ 250', 'solids_134'], CYCLE_KINDS)).toMatchObject({
      'LIQ 250': ['liquids', 'likely'],
      solids_134: ['production', 'likely'],
    });
    expect(meant('service', 'kind', ['PLC swapped', 'Tausch der Steuerung'], SERVICE_KINDS)).toEqual({
      'PLC swapped': ['controller_replaced', 'likely'],
      'Tausch der Steuerung': ['controller_replaced', 'likely'],
    });
  });

  it('two meanings alike are none, and one stem beside a strange word is none', () => {
    const stems = new Map([
      ['liquids', ['liq']],
      ['other', ['waste']],
    ]);
    expect(composedWord('Liquid waste', stems)).toBeUndefined();
    expect(composedWord('Liquid cupboard', stems)).toBeUndefined();
    expect(composedWord('Liquid 121', stems)).toEqual({ key: 'liquids', score: 0.75 });
    expect(meant('service', 'kind', ['Inspected roof'], SERVICE_KINDS)).toEqual({
      'Inspected roof': [undefined, 'open'],
    });
  });

  it('a word of denial turns them round', () => {
    expect(deniedPart('n. best.')).toBe('best');
    expect(deniedPart('No 4')).toBeUndefined();
    expect(deniedPart('N° 5 OK')).toBeUndefined();
    expect(meant('air_removal_tests', 'result', ['best.', 'n. best.'], TEST_RESULTS)).toEqual({
      'best.': ['pass', 'likely'],
      'n. best.': ['fail', 'likely'],
    });
  });

  it.each([
    ['Complies', 'Does not comply'],
    ['Entspricht', 'Entspricht nicht'],
    ['Conforme', 'Pas conforme'],
    ['Cumple', 'No cumple'],
  ])('%s and %s', (good, bad) => {
    expect(meant('air_removal_tests', 'result', [good, bad], TEST_RESULTS)).toEqual({
      [good]: ['pass', 'certain'],
      [bad]: ['fail', 'certain'],
    });
    expect(meant('cycles', 'outcome', [good, bad], CYCLE_OUTCOMES)).toEqual({
      [good]: ['completed', 'certain'],
      [bad]: ['failed', 'certain'],
    });
  });

  it('a known word that is denied further on is not that word', () => {
    const texts = [
      'Complies today not',
      'Entspricht heute nicht',
      'Virage pas complet',
      'Viraje no completo',
      'Partly complies',
    ];
    const words = Object.values(meant('air_removal_tests', 'result', texts, TEST_RESULTS));
    expect(words.filter(([word]) => word === 'pass')).toEqual([]);
    // What is denied here is the alarm.
    expect(meant('cycles', 'outcome', ['Completed, no alarm'], CYCLE_OUTCOMES)).toEqual({
      'Completed, no alarm': ['completed', 'likely'],
    });
  });
});

describe('words that take something back', () => {
  it('leave a pass to be asked for', () => {
    const texts = [
      'entspricht mit Einschränkung',
      'bestanden unter Vorbehalt',
      'passed with restriction',
      'pass (conditional)',
      'conforme sous réserve',
      'conforme con reservas',
    ];
    for (const [text, [word, confidence]] of Object.entries(
      meant('air_removal_tests', 'result', texts, TEST_RESULTS),
    ))
      expect([text, word, confidence]).toEqual([text, undefined, 'open']);
    expect(meant('air_removal_tests', 'result', ['entspricht', 'conforme'], TEST_RESULTS)).toEqual({
      entspricht: ['pass', 'certain'],
      conforme: ['pass', 'certain'],
    });
  });
});

describe('words that may mean something else', () => {
  it('are not certain', () => {
    expect(meant('cycles', 'kind', ['Test'], CYCLE_KINDS)).toEqual({ Test: ['other', 'likely'] });
    expect(meant('air_removal_tests', 'result', ['Repeat'], TEST_RESULTS)).toEqual({
      Repeat: ['invalid', 'likely'],
    });
    expect(meant('cleanings', 'task', ['Filtre'], CLEANING_TASKS)).toEqual({
      Filtre: ['drain_strainer', 'likely'],
    });
    // A waste load is a kind of cycle of its own, or production: its site decides.
    expect(meant('cycles', 'kind', ['Waste', 'Abfall', 'Déchets', 'Residuos'], CYCLE_KINDS)).toEqual({
      Waste: ['other', 'likely'],
      Abfall: ['other', 'likely'],
      Déchets: ['other', 'likely'],
      Residuos: ['other', 'likely'],
    });
  });

  it('the very word says more than the beginning of another', () => {
    expect(meant('cycles', 'outcome', ['Fehler', 'Fehlerfrei'], CYCLE_OUTCOMES)).toEqual({
      Fehler: ['failed', 'likely'],
      Fehlerfrei: ['completed', 'certain'],
    });
  });

  it('two things in one are nothing that can be told', () => {
    expect(meant('service', 'kind', ['Repairs and maintenance work'], SERVICE_KINDS)).toEqual({
      'Repairs and maintenance work': [undefined, 'open'],
    });
  });
});

describe('measures in names of columns', () => {
  it('stand written on to a word', () => {
    expect(measureOfHeader('HoldBarA')).toMatchObject({ pressure: 'bar', reference: 'absolute' });
    expect(measureOfHeader('EvacSec').duration).toBe('s');
    expect(withoutMeasure('Plateau mbara')).toBe('Plateau');
    expect(measureOfHeader('kPa').pressure).toBe('kPa');
  });

  it('stand between underscores', () => {
    expect(withoutMeasure('vide_sechage_kpa_abs')).toBe('vide_sechage');
    expect(withoutMeasure('CHMBR_PR_BARG')).toBe('CHMBR_PR');
    expect(withoutMeasure('hpa_test_score')).toBe('hpa_test_score');
  });

  it('seconds are no depth of a vacuum', () => {
    expect(canBeDryVacuum([240, 330, 420])).toBe(false);
    expect(canBeDryVacuum([5, 6, 7])).toBe(true);
    expect(canBeDryVacuum([])).toBe(true);
  });
});

describe('whole tables', () => {
  it('NULL of a database is no value among numbers, and a word among words', async () => {
    const lines = Array.from({ length: 30 }, (_, at) => {
      const short = at % 3 > 0;
      return `${7000 + at},A${at % 2},${310 + at},2024-03-${two(at + 1)} 08:00:00,SOLIDES_134,${at === 4 ? 'NULL' : 'TERMINE'},${short ? 'NULL' : 600 + at},${short ? 'NULL' : `5.${at % 9}`}`;
    });
    const [source] = await sourcesOf('cycles.csv', [
      'id_cycle,autoclave,num_cycle,debut,programme,etat,duree_sechage_s,vide_sechage_kpa_abs',
      ...lines,
    ]);
    const columnOf = (name: string) => source?.columns.find(({ field }) => field === name);
    expect(columnOf('drying_s')?.from).toEqual({ headers: ['duree_sechage_s'] });
    expect(columnOf('dry_vacuum_kpa')).toMatchObject({
      from: { headers: ['vide_sechage_kpa_abs'] },
      measure: { value: 'kPa absolute' },
    });
    expect(source?.words.outcome?.find(({ text }) => text === 'NULL')?.word).toBeUndefined();
    // Beside the number of the cycle an id is that of the row in the database; which of them it is, is not certain.
    expect(columnOf('cycle_number')).toMatchObject({
      from: { headers: ['num_cycle'] },
      match: { confidence: 'likely' },
    });
  });

  it('a full row is no total, whatever its words', async () => {
    const lines = Array.from(
      { length: 24 },
      (_, at) =>
        `2024-03-${two(at + 1)} 08:00:00,${100 + at},${at === 7 ? 'media_121' : 'solids_134'},OK,134.${at % 9}`,
    );
    const [source] = await sourcesOf('runs.csv', ['start,run,prog,status,Tmin', ...lines]);
    expect(source?.skip).toEqual({});
    expect(source?.words.kind?.map(({ text }) => text)).toContain('media_121');
  });

  it('a rise of pressure per time makes a leak test of a list with pass and fail', async () => {
    const lines = Array.from(
      { length: 20 },
      (_, at) => `Unit ${at % 2},${two(at + 1)}/04/2024,0.${two(30 + at)},1.3,${at % 7 === 3 ? 'F' : 'P'}`,
    );
    const [source] = await sourcesOf('register.csv', ['Unit,Date,Incr. mbar/min,Max allowed,P/F', ...lines]);
    expect(source?.kind.value).toBe('leak_tests');
    expect(source?.columns.find(({ field }) => field === 'leak_rate_kpa_min')?.measure?.value).toBe(
      'mbar per min',
    );
  });

  it('no column is surer than the kind of record whose field it is', async () => {
    const lines = Array.from({ length: 20 }, (_, at) => `Unit ${at % 2},2024-04-${two(at + 1)},${at % 5},ok`);
    const sources = await sourcesOf('list.csv', ['Unit,Date,Score,Result', ...lines]);
    for (const { kind, columns } of sources)
      if (kind.confidence !== 'certain')
        for (const { field, match } of columns)
          if (!['unit', 'time', 'note'].includes(field)) expect(match.confidence).not.toBe('certain');
    expect(sources.map(({ kind }) => kind.confidence)).not.toContain('certain');
  });
});
