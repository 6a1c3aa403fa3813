import { describe, expect, it } from 'vitest';
import { learn } from '../../pipeline/learn/learn.ts';
import { openQuestions } from '../../pipeline/learn/questions.ts';
import { loadVocabulary } from '../../pipeline/learn/vocabulary.ts';
import { withFolder } from '../ingest/read-folder.ts';

/** A cleaning sheet of three units and four weeks: the first text each day, the second once a week. */
function sheet(headers: readonly string[], [daily, weekly]: readonly string[]): string {
  const rows = Array.from({ length: 28 }, (_, at) => at + 1).flatMap((day) =>
    ['S1', 'S2', 'S3'].map((unit) => `2025-03-${day};${unit};${day % 7 === 0 ? weekly : daily}`),
  );
  return [headers.join(';'), ...rows, ''].join('\n').replace(/-(\d);/g, '-0$1;');
}

const learned = (file: string, headers: readonly string[], texts: readonly string[]) =>
  withFolder({ [file]: sheet(headers, texts) }, async (folder) => {
    const proposal = await learn(folder, { vocabulary: loadVocabulary(), zone: 'Europe/Berlin' });
    const [source] = proposal.sources;
    const of = (field: string) => source?.columns.find((column) => column.field === field);
    return {
      kind: source?.kind.value,
      task: of('task'),
      note: of('note'),
      words: source?.words.task?.map(({ text, word }) => [text, word]),
      asked: openQuestions(proposal).map(({ about }) => about.replace(/^.*: /, '')),
    };
  });

describe('a cleaning sheet without a column named as the task', () => {
  it.each([
    ['cleaning sheet.csv', ['Date', 'Machine', 'What was done'], ['Filter cleaned', 'Chamber wash']],
    ['cleaning sheet.csv', ['Date', 'Machine', 'Action taken'], ['Strainer cleaned', 'Chamber cleaned']],
    ['cleaning sheet.csv', ['Date', 'Machine', 'Notes'], ['Strainer', 'Chamber']],
    ['Reinigung.csv', ['Datum', 'Gerät', 'Durchgeführte Arbeiten'], ['Sieb gereinigt', 'Kammer gewischt']],
    ['Reinigung.csv', ['Datum', 'Gerät', 'Tätigkeitsbeschreibung'], ['Sieb gereinigt', 'Kammer gewischt']],
    ['Reinigung.csv', ['Datum', 'Gerät', 'Durchgeführt'], ['Sieb gereinigt', 'Kammer gewischt']],
    ['nettoyage.csv', ['Date', 'Autoclave', 'Compte rendu'], ['Filtre nettoyé', 'Lavage cuve']],
    ['nettoyage.csv', ['Date', 'Autoclave', 'Ce qui a été fait'], ['Crépine nettoyée', 'Chambre nettoyée']],
    ['limpieza.csv', ['Fecha', 'Equipo', 'Detalle del trabajo'], ['Limpieza de filtro', 'Lavado de cámara']],
  ])('%s: %j with %j: the column of few texts is the task, likely', async (file, headers, texts) => {
    const { kind, task, note, words, asked } = await learned(file, headers, texts);
    expect([kind, task?.from, task?.match.confidence]).toEqual([
      'cleanings',
      { headers: [headers[2]] },
      'likely',
    ]);
    expect([note, asked]).toEqual([undefined, []]);
    expect(words).toEqual([
      [texts[0], 'drain_strainer'],
      [texts[1], 'chamber'],
    ]);
  });

  it('words that are not known are asked one by one, and nothing is asked of the whole file', async () => {
    const { task, asked } = await learned(
      'cleaning sheet.csv',
      ['Date', 'Machine', 'Work details'],
      ['Sc clnd', 'Chb wsh'],
    );
    expect(task?.from).toEqual({ headers: ['Work details'] });
    expect(asked).toEqual(['task "Sc clnd"', 'task "Chb wsh"']);
  });

  it.each([
    ['cleaning sheet.csv', ['Date', 'Machine', 'Comments'], ['ok', 'all fine']],
    ['Reinigung.csv', ['Datum', 'Gerät', 'Bemerkung'], ['i.O.', 'alles gut']],
    ['nettoyage.csv', ['Date', 'Autoclave', 'Observations'], ['RAS', 'bon']],
    ['limpieza.csv', ['Fecha', 'Equipo', 'Novedades'], ['sin novedad', 'bien']],
  ])('%s: %j with %j: remarks stay remarks, and the task is asked', async (file, headers, texts) => {
    const { task, note, asked } = await learned(file, headers, texts);
    expect([note?.from, task?.from]).toEqual([
      { headers: [headers[2]] },
      expect.objectContaining({ always: undefined }),
    ]);
    expect(asked).toEqual(['task']);
  });

  it('beside a column of the task a remark stays a remark', async () => {
    const rows = ['Date;Machine;Task;What was done'];
    for (let day = 10; day < 30; day++)
      rows.push(`2025-03-${day};S1;${day === 20 ? 'Chamber' : 'Strainer'};Strainer cleaned`);
    await withFolder({ 'cleaning sheet.csv': `${rows.join('\n')}\n` }, async (folder) => {
      const { sources } = await learn(folder, { vocabulary: loadVocabulary(), zone: 'Europe/Berlin' });
      const of = (field: string) => sources[0]?.columns.find((column) => column.field === field)?.from;
      expect([of('task'), of('note')]).toEqual([{ headers: ['Task'] }, { headers: ['What was done'] }]);
    });
  });
});
