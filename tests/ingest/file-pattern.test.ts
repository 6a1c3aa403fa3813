import { describe, expect, it } from 'vitest';
import { filePattern, partOfName } from '../../pipeline/ingest/file-pattern.ts';

describe('file pattern', () => {
  it.each([
    ['cycles-*.csv', 'cycles-2025.csv', true],
    ['cycles-*.csv', 'Cycles-2025.CSV', true],
    ['cycles-*.csv', 'old/cycles-2025.csv', false],
    ['cycles-*.csv', 'cycles-2025.csv.bak', false],
    ['**/cycles*.csv', 'cycles.csv', true],
    ['**/cycles*.csv', 'a/b/cycles-1.csv', true],
    ['**/cycles*.csv', 'a/.hidden/cycles.csv', false],
    ['*.csv', '.hidden.csv', false],
    ['.hidden.csv', '.hidden.csv', true],
    ['logs/*/x.csv', 'logs/a/x.csv', true],
    ['logs/*/x.csv', 'logs/a/b/x.csv', false],
    ['logs/**', 'logs/a/b/x.csv', true],
    ['logs/**', 'logs', false],
    ['./a.csv', 'a.csv', true],
    ['logs\\a.csv', 'logs/a.csv', true],
    ['../a.csv', 'a.csv', false],
    ['/a.csv', 'a.csv', false],
    ['a+(1).csv', 'a+(1).csv', true],
    ['a+(1).csv', 'aa1.csv', false],
    ['unit ?.csv', 'unit 3.csv', true],
    ['unit ?.csv', 'unit 33.csv', false],
    ['Gerät*.csv', 'Gera\u0308t 1.csv', true],
  ])('%s and %s: %s', (pattern, path, matches) => {
    expect(filePattern(pattern)(path)).toBe(matches);
  });

  it('finds the part of a name', () => {
    expect(partOfName('log-*.csv')('log-Unit 3.csv')).toBe('Unit 3');
    expect(partOfName('log-*.csv')('LOG-S1.CSV')).toBe('S1');
    expect(partOfName('log-*.csv')('log-.csv')).toBe('');
    expect(partOfName('log-*.csv')('other.csv')).toBeUndefined();
    expect(partOfName('log.csv')('log.csv')).toBeUndefined();
  });
});
