import { describe, expect, it } from 'vitest';
import { looksPersonal } from '../../pipeline/ingest/personal-columns.ts';
import { guessDates, guessSerial } from '../../pipeline/learn/guess-dates.ts';
import {
  guessDryVacuum,
  guessDurations,
  guessExposurePressure,
  guessLeak,
  guessTemperature,
} from '../../pipeline/learn/guess-measure.ts';
import { guessDecimalMark } from '../../pipeline/learn/guess-numbers.ts';
import { measureOfHeader, withoutMeasure } from '../../pipeline/learn/header-measure.ts';
import { guessEncoding } from '../../pipeline/learn/read-sample.ts';
import { timePattern } from '../../pipeline/learn/time-pattern.ts';

const brief = (guess: { value?: unknown; confidence: string } | undefined) =>
  guess && [guess.value, guess.confidence];

describe('pressure by saturated steam', () => {
  // Saturated steam at 134 C has 3.04 bar absolute, at 121 C 2.05 bar (steam tables; IAPWS-IF97): gauge a standard atmosphere (1.013 bar) less.
  it.each([
    ['Pressure', 134, 304, 'kPa absolute', 'likely'],
    ['Pressure (kPa)', 134, 304, 'kPa absolute', 'certain'],
    ['Pressure (kPa)', 134, 203, 'kPa gauge', 'certain'],
    ['Pressure (bar)', 134, 3.04, 'bar absolute', 'certain'],
    ['Druck [bar]', 134, 2.03, 'bar gauge', 'certain'],
    ['Druck [mbar]', 121, 2050, 'mbar absolute', 'certain'],
    ['Pressure', 121, 1.04, 'bar gauge', 'likely'],
    ['Pressure PSI', 134, 29.4, 'psi gauge', 'certain'],
    ['Pressure', 134, 44.1, 'psi absolute', 'likely'],
  ])('%s at %d C: %d is %s', (header, celsius, value, measure, confidence) => {
    expect(brief(guessExposurePressure([value], measureOfHeader(header), celsius))).toEqual([
      measure,
      confidence,
    ]);
  });

  it('is open where nothing fits, where the header is contradicted, and without a temperature', () => {
    const of = (header: string, value: number, celsius: number | undefined) =>
      guessExposurePressure([value], measureOfHeader(header), celsius);
    expect(of('Pressure (bar)', 5.5, 134).confidence).toBe('open');
    expect(of('Pressure (kPa gauge)', 304, 134).confidence).toBe('open');
    expect(of('Pressure (bar)', 2.03, undefined).options).toEqual(['bar absolute', 'bar gauge']);
    expect(of('Pressure (MPa)', 0.304, 134)).toMatchObject({ confidence: 'open', options: [] });
    expect(of('Pressure', 304, 134).why).toContain('saturated steam at 134.0 C has 304');
  });

  it('dry vacuum by what is left of the air', () => {
    const of = (header: string, value: number) =>
      brief(guessDryVacuum([value], measureOfHeader(header), undefined));
    expect(of('Dry vacuum (inHg)', 28.5)).toEqual(['inHg vacuum', 'certain']);
    expect(of('Dry vacuum (kPa)', 4.5)).toEqual(['kPa absolute', 'certain']);
    expect(of('Dry vacuum (mbar)', -950)).toEqual(['mbar gauge', 'certain']);
    expect(of('Dry vacuum', 45)).toEqual([undefined, 'open']);
  });
});

describe('other measures', () => {
  it('temperature by range, against the header open', () => {
    expect(brief(guessTemperature([134], measureOfHeader('T min')))).toEqual(['C', 'certain']);
    expect(brief(guessTemperature([273], measureOfHeader('T min')))).toEqual(['F', 'certain']);
    expect(brief(guessTemperature([273], measureOfHeader('T min (°C)')))).toEqual([undefined, 'open']);
    expect(brief(guessTemperature([40], measureOfHeader('T min')))).toEqual([undefined, 'open']);
  });

  it('lengths together: 4 and 20 are minutes, 240 and 1200 seconds, 130 alone may be either', () => {
    const of = (fields: Record<string, number>, header = 'x') =>
      [
        ...guessDurations(
          Object.entries(fields).map(([field, value]) => ({
            field,
            said: measureOfHeader(header),
            values: [value],
            clocks: [],
          })),
        ).values(),
      ].map(brief);
    expect(of({ exposure_s: 4, drying_s: 20 })).toEqual([
      ['min', 'likely'],
      ['min', 'likely'],
    ]);
    expect(of({ exposure_s: 240, drying_s: 1200 })).toEqual([
      ['s', 'likely'],
      ['s', 'likely'],
    ]);
    expect(of({ drying_s: 60 })).toEqual([[undefined, 'open']]);
    expect(of({ exposure_s: 4 }, 'Exposure (min)')).toEqual([['min', 'certain']]);
    const clock = guessDurations([
      { field: 'exposure_s', said: measureOfHeader('x'), values: [], clocks: ['04:00', '18:00'] },
    ]);
    expect(brief(clock.get('exposure_s'))).toEqual(['mm:ss', 'certain']);
  });

  it('leak by its limit, which EN 285 sets at 0.13 kPa/min; without one open', () => {
    const of = (header: string, value: number, limits: number[]) =>
      brief(guessLeak([value], measureOfHeader(header), limits));
    expect(of('Leak', 0.05, [0.13])).toEqual(['kPa per min', 'likely']);
    expect(of('Leak (mbar)', 5, [13])).toEqual(['mbar per 10 min', 'likely']);
    expect(of('Leak mmHg/min', 0.4, [])).toEqual(['mmHg per min', 'certain']);
    expect(of('Leak', 0.5, [])).toEqual([undefined, 'open']);
    expect(of('Leak (mbar)', 0.5, [])).toEqual([undefined, 'open']);
  });

  it('the m of mbar is its own; minutes after a pressure are those of a leak', () => {
    expect(measureOfHeader('DruckMittel_mbar').pressure).toBe('mbar');
    expect(measureOfHeader('leak_kpa_min')).toMatchObject({ pressure: 'kPa', per: 'per min' });
    expect(measureOfHeader('press_bar_min').per).toBeUndefined();
  });

  it('headers without their measure', () => {
    expect(
      ['Temp min (°C)', 'Druck [bar]', 'Evac_time_sec', 'Leak rate mbar/min', '(s)'].map(withoutMeasure),
    ).toEqual(['Temp min', 'Druck', 'Evac_time', 'Leak rate', '(s)']);
  });
});

describe('dates', () => {
  it.each([
    [['2025-03-13 06:30'], 'yyyy-MM-dd HH:mm:ss', 'certain'],
    [['13/03/2025', '01/04/2025'], 'dd/MM/yyyy', 'certain'],
    [['03/13/2025', '04/01/2025'], 'MM/dd/yyyy', 'certain'],
    [['3.4.2025', '13.4.2025 '.trim()], 'd.M.yyyy', 'certain'],
    [['13-Mar-25'], 'dd-MMM-yy', 'certain'],
    [['März 3, 2025'], 'MMM d, yyyy', 'certain'],
    [['20250313 06:30'], 'yyyyMMdd HH:mm', 'certain'],
    [['20260914083000'], 'yyyyMMddHHmmss', 'certain'],
    [['202609140830'], 'yyyyMMddHHmm', 'certain'],
    [['20260914T083000Z'], "yyyyMMdd'T'HHmmssXXX", 'certain'],
    [['2026-09-14T08:30:00+02:00'], 'yyyy-MM-dd HH:mm:ss', 'certain'],
    [['13.03.2025 06:30 +02:00'], 'dd.MM.yyyy HH:mm XXX', 'certain'],
    [['3/13/2025 6:30:00 PM', '4/2/2025 6:31:00 am'], 'M/d/yyyy h:mm:ss a', 'certain'],
    [['03/13/2025 06:30pm'], 'MM/dd/yyyy hh:mma', 'certain'],
    // The day of the week proves the order that the numbers leave open: 3 April 2025 was a Thursday, 4 March a Tuesday.
    [['Thu 03/04/2025 06:30'], 'EEE dd/MM/yyyy HH:mm', 'certain'],
    [['Di, 03/04/2025'], 'EEE, MM/dd/yyyy', 'certain'],
    [['lun. 3 févr. 2025'], 'EEE d MMM yyyy', 'certain'],
    // ISO 8601, calendar date in extended format: year, month, day, with hyphens.
    [['2025-03-04', '2025-05-06'], 'yyyy-MM-dd', 'certain'],
    [['2025-03-04 06:30', '2025-05-06 07:10'], 'yyyy-MM-dd HH:mm:ss', 'certain'],
    [['2025/03/04', '2025/05/06'], 'yyyy/MM/dd', 'likely'],
    [['2025.3.4', '2025.5.6'], 'yyyy.M.d', 'likely'],
    [['2025-3-4', '2025-5-6'], 'yyyy-M-d', 'likely'],
    [['2025-13-04', '2025-05-06'], 'yyyy-dd-MM', 'certain'],
    [['03/04/2025', '05/06/2025'], undefined, 'open'],
    [['03/04/25', '05/06/25'], undefined, 'open'],
  ])('%j', (texts, pattern, confidence) => {
    expect(brief(guessDates(texts))).toEqual([pattern, confidence]);
  });

  it('typed in several forms: each by itself, open where one of them is', () => {
    expect(brief(guessDates(['2025-03-01', '13.03.2025', '2025-03-14', '15.3.2025', '2025-03-16']))).toEqual([
      'yyyy-MM-dd | d.M.yyyy'.replace('d.M', 'dd.M'),
      'likely',
    ]);
    expect(guessDates(['2025-03-01', '03/04/2025', '2025-03-14', '05/03/2025', '2025-03-16'])).toMatchObject({
      value: undefined,
      confidence: 'open',
      options: ['yyyy-MM-dd | dd/MM/yyyy', 'yyyy-MM-dd | MM/dd/yyyy'],
    });
    expect(guessDates(['2025-03-01', 'soon', '2025-03-14', 'later'])).toBeUndefined();
  });

  it('one slip does not refute an order, many do', () => {
    const texts = Array.from({ length: 300 }, (_, at) => `0${(at % 9) + 1}/0${((at * 4) % 9) + 1}/2025`);
    expect(guessDates([...texts, '13/05/2025'])?.confidence).toBe('open');
    expect(brief(guessDates([...texts, ...Array.from({ length: 10 }, () => '13/05/2025')]))).toEqual([
      'dd/MM/yyyy',
      'certain',
    ]);
  });

  it('order of rows speaks for an order, and is called likely', () => {
    const texts = Array.from(
      { length: 18 },
      (_, at) => `${at % 2 === 0 ? '03' : '10'}/0${Math.floor(at / 2) + 1}/2025`,
    );
    expect(brief(guessDates(texts))).toEqual(['dd/MM/yyyy', 'likely']);
  });

  it('are none where they are none', () => {
    for (const texts of [['12.5', '13.1'], ['S1'], ['06:30'], [], ['10/250'], ['2025']])
      expect(guessDates(texts)).toBeUndefined();
    expect(brief(guessSerial(['45719.27', '45720']))).toEqual(['serial 1900', 'likely']);
    expect(guessSerial(['134.2', '500'])).toBeUndefined();
    expect([
      timePattern(['06:30', '7:05']),
      timePattern(['6:30 PM']),
      timePattern(['06h30']),
      timePattern(['134']),
    ]).toEqual(['H:mm', 'h:mm a', "HH'h'mm", undefined]);
  });
});

describe('decimal mark, encoding, people', () => {
  it('1,234 alone is open', () => {
    expect(brief(guessDecimalMark(['1,234', '2,500']))).toEqual([undefined, 'open']);
    expect(brief(guessDecimalMark(['1,234', '2,5']))).toEqual([',', 'certain']);
    expect(brief(guessDecimalMark(['1.234,5']))).toEqual([',', 'certain']);
    expect(brief(guessDecimalMark(['0.134']))).toEqual(['.', 'certain']);
    expect(brief(guessDecimalMark(['1.5', '2,5']))).toEqual([undefined, 'open']);
    expect(brief(guessDecimalMark(['12', 'x']))).toEqual(['.', 'certain']);
  });

  it('bytes', () => {
    expect(brief(guessEncoding(Buffer.from('Gerät'), false))).toEqual(['utf-8', 'certain']);
    expect(brief(guessEncoding(Buffer.from('Gerät', 'latin1'), false))).toEqual(['windows-1252', 'likely']);
    expect(brief(guessEncoding(Buffer.from('Unit,Start', 'utf16le'), false))).toEqual(['utf-16le', 'likely']);
    expect(guessEncoding(Buffer.from([0, 1, 0, 0, 5, 6, 0, 0, 0]), false)).toBeUndefined();
  });

  it('columns that tell of people', () => {
    expect(looksPersonal('Operator', ['KM', 'AB'])).toBe('initials');
    expect(looksPersonal('x', ['Ada Example', 'Bo Sample', 'Cy Testcase'])).toBe('names');
    expect(looksPersonal('Geburtsdatum', [])).toBe('dates of birth');
    expect(looksPersonal('x', ['01.02.1944', '03.04.1971', '05.06.2002'])).toBe('dates of birth');
    expect(looksPersonal('Fallnummer', ['1'])).toBe('record numbers');
    expect(looksPersonal('Started', ['01.02.2024', '03.04.2024', '05.06.2025'])).toBeUndefined();
    expect(looksPersonal('Program', ['Wrapped', 'Textiles', 'Liquids'])).toBeUndefined();
  });
});
