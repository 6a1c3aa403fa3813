import { describe, expect, it } from 'vitest';
import { BY_PARTS, COMPOSED_SCORE } from '../../pipeline/learn/compose-header.ts';
import { withoutMeasure } from '../../pipeline/learn/header-measure.ts';
import { loadVocabulary } from '../../pipeline/learn/vocabulary.ts';

const vocabulary = loadVocabulary();
const composed = (header: string, hot?: boolean, said?: 'duration' | 'temperature' | 'pressure') =>
  vocabulary
    .headerOf(withoutMeasure(header), { hot, said })
    .filter(({ phrase }) => phrase === BY_PARTS)
    .map(({ key }) => key);

// Abbreviations as exports have them; common practice, no source.
describe('names of columns by their parts', () => {
  it.each([
    ['Steril. max. temp.', 'exposure_temperature_max_c'],
    ['t_evac', 'evacuation_s'],
    ['Trocknungsdauer ges', 'drying_s'],
    ['Dampfablassdauer', 'exhaust_s'],
    ['press_ster', 'exposure_pressure_kpa'],
    ['Steril. Druck', 'exposure_pressure_kpa'],
    ['Tps séch.', 'drying_s'],
    ['Vac dry press', 'dry_vacuum_kpa'],
    ['Cyc. Num.', 'cycle_number'],
    ['alarm_msg', 'abort_text'],
    ['CHMBR_PR_BARG', 'exposure_pressure_kpa'],
    ['PR_BARG', 'exposure_pressure_kpa'],
    ['CHMBR_BARG', 'exposure_pressure_kpa', 'pressure'],
  ] as const)('%s', (header, expected, said?: 'pressure') => {
    const [best] = vocabulary.headerOf(withoutMeasure(header), { hot: undefined, said });
    expect(best?.key).toBe(expected);
  });

  it.each([
    'Jacket temp min',
    'Manteltemperatur min',
    'Temp set max',
    'Soll Haltezeit',
    'Load no',
    'Door time',
    'Programm Nr.',
    'Drying start',
    'Leak test time',
    'Customer order code of ward',
    'Température enveloppe maxi',
    'Presión camisa',
    'PR_INIT_MBAR',
    'Pr. no.',
    'Start pressure',
  ])('%s says nothing', (header) => {
    expect(composed(header)).toEqual([]);
  });

  it.each([
    ['dt_entered', 'dates', 'entered_at'],
    ['Date planifiée', 'dates', 'due'],
    ['Wieder in Betrieb seit', 'dates', 'to'],
    ['Fecha detención', 'dates', 'from'],
    ['Last modified date', 'dates', 'unread'],
    ['Fecha acuerdo', 'dates', 'decided_at'],
    ['Testzeit', 'clock', 'time_of_day'],
    ['lk_rate_lim', 'numbers', 'limit_kpa_min'],
    ['Tech comments', 'text', 'note'],
    ['Ausgeführte Arbeiten', 'text', 'work'],
    ['JOB_DTLS', 'text', 'work'],
    ['DTLS', 'text', 'note'],
    ['CLNG_DT', 'dates', 'date'],
    ['Tipo mantención', 'text', 'service_kind'],
    ['Cargo responsable', 'text', 'role'],
    ['Farbwechsel', 'text', 'result'],
    ['Lugar de toma', 'text', 'point'],
  ] as const)('%s over %s', (header, holds, expected) => {
    const found = vocabulary.headerOf(header, { hot: undefined, said: undefined, holds });
    expect(found.filter(({ score }) => score >= COMPOSED_SCORE).map(({ key }) => key)).toContain(expected);
  });

  it('a mere t is what its numbers are', () => {
    expect(composed('t ster', true)).not.toContain('exposure_s');
    expect(composed('t ster', false)).toContain('exposure_s');
    expect(composed('t_dry', true)).toEqual([]);
    expect(composed('t_dry_s', true, 'duration')).toEqual(['drying_s']);
  });

  it('is never as sure as a phrase', () => {
    for (const { score, phrase } of vocabulary.headerOf('t_evac_s', { hot: false, said: 'duration' }))
      if (phrase === BY_PARTS) expect(score).toBeLessThan(0.88);
  });
});

describe('endings that databases put to names', () => {
  it.each([
    ['task_cd', 'task'],
    ['ASSET_NM', 'unit'],
    ['reason_cd', 'reason'],
  ])('%s is likely what it is without', (header, expected) => {
    const [best] = vocabulary.headerOf(header, { hot: undefined, said: undefined });
    expect(best).toMatchObject({ key: expected, weak: true });
  });
});
