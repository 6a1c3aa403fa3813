import { describe, expect, it } from 'vitest';
import { closedWords, yesNoWords } from '../../../pipeline/ingest/codecs/words.ts';

describe('words', () => {
  const read = closedWords(
    ['completed', 'aborted', 'running'],
    { completed: ['OK', 'fertig  ohne Fehler'], aborted: 'Abbruch', running: 'aborted' },
    'source x, field outcome',
  );

  it('folds letter case, blanks and the form of accents', () => {
    expect(read('ok')).toBe('completed');
    expect(read(' Fertig ohne   FEHLER ')).toBe('completed');
    expect(closedWords(['aborted'], { aborted: 'Störung' }, '')('Sto\u0308rung')).toBe('aborted');
  });

  it('accepts the own words, underscores as blanks', () => {
    expect(read('completed')).toBe('completed');
    expect(closedWords(['air_removal_test'], {}, '')('Air removal test')).toBe('air_removal_test');
  });

  it('lets the mapping of the site rule over an own word', () => {
    expect(read('aborted')).toBe('running');
  });

  it('knows no other word', () => {
    expect(read('done')).toBeUndefined();
    expect(read('__proto__')).toBeUndefined();
    expect(read('constructor')).toBeUndefined();
  });

  it('refuses a word that is mapped onto two', () => {
    expect(() => closedWords(['a', 'b'], { a: 'x', b: ['X'] }, 'source s, field f')).toThrow(
      expect.objectContaining({ code: 'mapped_word', message: expect.stringContaining('source s, field f') }),
    );
  });

  it('reads yes and no in four languages and as mapped', () => {
    const yesNo = yesNoWords({ yes: 'x', no: ['-'] }, '');
    expect(['yes', 'JA', 'oui', 'Sí', '1', 'x'].map(yesNo)).toEqual(Array(6).fill(true));
    expect(['no', 'Nein', 'non', '0', '-'].map(yesNo)).toEqual(Array(5).fill(false));
    expect(yesNo('maybe')).toBeUndefined();
    expect(() => yesNoWords({ perhaps: 'x' }, 'here')).toThrow('here');
  });
});
