import { describe, expect, it } from 'vitest';
import { learn } from '../../pipeline/learn/learn.ts';
import { loadVocabulary } from '../../pipeline/learn/vocabulary.ts';
import { withFolder } from '../ingest/read-folder.ts';

const vocabulary = loadVocabulary();
const two = (number: number): string => String(number).padStart(2, '0');

/** A log of 30 cycles under a header in two rows; the last columns are given. */
const learnt = (groups: string, names: string, cells: (at: number) => string) =>
  withFolder(
    {
      'cycles.csv': [
        `Identification;;;;Conclusion;${groups}`,
        `Appareil;N° de cycle;Début;Programme;Résultat;${names}`,
        ...Array.from(
          { length: 30 },
          (_, at) =>
            `S${at % 2};${100 + at};${two((at % 28) + 1)}/03/2025 08:10;Instruments 134;Conforme;${cells(at)}`,
        ),
        '',
      ].join('\r\n'),
    },
    async (folder) => (await learn(folder, { vocabulary, zone: 'Europe/Paris' })).sources[0]!,
  );
const from = (source: Awaited<ReturnType<typeof learnt>>, field: string) => {
  const column = source.columns.find((one) => one.field === field);
  return column && 'headers' in column.from ? [...column.from.headers, column.match.confidence] : undefined;
};

describe('a row of groups above the names of columns', () => {
  it('is read where a name is only clear with its group', async () => {
    const source = await learnt(
      'Plateau;;Séchage;',
      'Durée (min);T° mini (°C);Temps (min);Pression (mbar)',
      (at) => `${at % 2 ? 4 : 18};134.${at % 9};${20 + (at % 3)};5${at % 9}`,
    );
    expect([source.headerRows, source.headerRow]).toEqual([2, 2]);
    expect(from(source, 'exposure_s')?.[0]).toBe('Plateau Durée (min)');
    expect(from(source, 'drying_s')?.[0]).toBe('Séchage Temps (min)');
    expect(from(source, 'exposure_temperature_min_c')?.[0]).toBe('Plateau T° mini (°C)');
    // A pressure in drying is none of the exposure.
    expect(from(source, 'exposure_pressure_kpa')).toBeUndefined();
    expect(from(source, 'dry_vacuum_kpa')?.[0]).toBe('Séchage Pression (mbar)');
    // What a name says without its group is never certain.
    expect(from(source, 'start')).toEqual(['Identification Début', 'likely']);
    expect(from(source, 'unit')?.at(-1)).toBe('likely');
  });

  it('that speaks of the jacket keeps its columns from those of the chamber', async () => {
    const source = await learnt(
      'Enveloppe;',
      'T° mini (°C);T° maxi (°C)',
      (at) => `134.${at % 9};135.${at % 9}`,
    );
    expect(source.headerRows).toBe(2);
    expect(from(source, 'exposure_temperature_min_c')).toBeUndefined();
    expect(from(source, 'exposure_temperature_max_c')).toBeUndefined();
  });

  it('that adds nothing is left out', async () => {
    const source = await learnt(
      'Mesures;',
      'T° mini (°C);T° maxi (°C)',
      (at) => `134.${at % 9};135.${at % 9}`,
    );
    expect(source.headerRows).toBe(1);
    expect(from(source, 'exposure_temperature_min_c')).toEqual(['T° mini (°C)', 'certain']);
  });
});
