import { describe, expect, it } from 'vitest';
import { en } from '../../../pipeline/report/words/en.ts';

const { answers } = en;
const cleaning = {
  due: 30,
  done: 20,
  late: 4,
  missed: 3,
  notRecorded: 2,
  contradicted: 1,
  open: 0,
  outstanding: [],
  fromBefore: 0,
};
const failures = {
  total: 12,
  shown: [] as string[],
  suggested: [] as string[],
  notShown: 0,
  cannotTell: 12,
  notComparable: 0,
  suggestedP: null,
  measured: null,
};

describe('the answers', () => {
  it('say how much of the cleaning was done, and what happened to the rest', () => {
    expect(answers.cleaning(cleaning)).toEqual({
      lead: '24 of 30 tasks due were done, 4 of them late.',
      detail: 'The rest: 3 missed, 2 not recorded and 1 contradicted by the cycle log.',
    });
    expect(
      answers.cleaning({ ...cleaning, done: 30, late: 0, missed: 0, notRecorded: 0, contradicted: 0 }).lead,
    ).toBe('Yes: all 30 tasks due were done.');
    expect(answers.cleaning({ ...cleaning, due: 0 }).lead).toBe('Nothing is known to have been due.');
  });

  it('tell "can’t tell" from "not shown"', () => {
    expect(answers.failures(failures).lead).toBe('The record can’t tell.');
    expect(answers.failures({ ...failures, notShown: 2, cannotTell: 10 }).lead).toBe('No rise was shown.');
    expect(answers.failures({ ...failures, shown: ['A1 (x)'], cannotTell: 11 }).lead).toBe(
      'Shown for A1 (x).',
    );
    expect(answers.failures({ ...failures, suggested: ['A1 (x)'], cannotTell: 11 }).lead).toBe(
      'Shown for none; suggested for A1 (x).',
    );
    expect(answers.failures({ ...failures, total: 0 }).lead).toBe(
      'The question can’t be put to this record.',
    );
  });

  it('say what is outstanding, and how much of it from earlier months', () => {
    const outstanding = [
      { task: 'Professional cleaning', count: 5 },
      { task: 'Chamber cleaning', count: 2 },
    ];
    expect(answers.cleaning({ ...cleaning, outstanding, fromBefore: 3 }).detail).toMatch(
      / Outstanding at its end: 7, 3 of them from earlier months \(professional cleaning 5 and chamber cleaning 2\)\.$/,
    );
  });

  it('set what was measured beside what is suggested, and nothing where nothing is', () => {
    const measured = { shown: [0.005, 0.025] as [number, number], either: [0.31, 0.67] as [number, number] };
    const beside = { ...failures, measured, suggestedP: { low: 0.18, high: 0.4 } };
    expect(answers.failures({ ...beside, suggested: ['A1 (x)', 'A2 (x)'], cannotTell: 10 }).detail).toMatch(
      /suggested in 2 \(adjusted p 0\.18 to 0\.40\).* With nothing to find, 31% to 67% of simulated reviews had one suggested or shown, 0\.5% to 2\.5% one shown\.$/,
    );
    expect(answers.failures(beside).detail).not.toContain('simulated');
  });

  it('name units in order, and cut long lists', () => {
    const units = Array.from({ length: 9 }, (_, index) => `A${index}`);
    expect(answers.units({ units: 60, act: units, decide: [], look: ['B1'] })).toEqual({
      lead: 'A0 first; 9 before the next load, 1 soon, 50 with no reason.',
      detail: 'Before the next load: A0, A1, A2, A3, A4, A5 and 3 more; soon: B1.',
    });
    expect(answers.units({ units: 4, act: [], decide: [], look: [] }).lead).toBe(
      'None of the 4 units has a reason on record.',
    );
  });

  it('say what could not be read', () => {
    const nothing = {
      files: 0,
      rows: 0,
      records: 0,
      duplicates: 0,
      rejected: 0,
      skipped: 0,
      cellsLost: 0,
      filesFailed: 1,
      lone: 0,
      unclassifiedTexts: 0,
    };
    expect(answers.reading(nothing).lead).toBe('Nothing was read.');
    expect(answers.reading({ ...nothing, files: 1, rows: 1200, records: 1200, filesFailed: 0 }).lead).toBe(
      'Every one of 1,200 rows could be read.',
    );
    expect(answers.reading({ ...nothing, files: 1, rows: 1200, rejected: 7, records: 1193 }).detail).toBe(
      '1 file: 1,193 records, 0 duplicates, 7 rejected, 0 skipped; 1 source or file could not be used.',
    );
    expect(answers.reading({ ...nothing, files: 1, filesFailed: 0, lone: 2 }).detail).toContain(
      '; 2 records lie months from all others and are taken for slips.',
    );
  });
});
