import { expect, it } from 'vitest';
import { DEFAULT_ABORT_TEXTS } from '../../../pipeline/site/abort-texts.ts';
import { abortClasses } from '../../../pipeline/transform/cycles/abort-class.ts';

it('letter case, runs of blanks and the encoding of accents don’t count, in the phrase as in the text', () => {
  const classOf = abortClasses([
    { contains: 'heat  up', class: 'come_up_slow' },
    { contains: 'Tu\u0308r', class: 'door' },
    { contains: 'g\u00e9n\u00e9rateur', class: 'utility' },
  ]);
  expect(['HEAT  UP slow', 'heat up', 'HEAT\t\u00a0UP'].map(classOf)).toEqual(Array(3).fill('come_up_slow'));
  expect(['T\u00fcr offen', 'T\u00dcR OFFEN', 'tu\u0308r'].map(classOf)).toEqual(Array(3).fill('door'));
  expect(classOf('GE\u0301NE\u0301RATEUR ARR\u00caT\u00c9')).toBe('utility');
});

it('blanks at the ends of a phrase set it off from what stands beside it', () => {
  const classOf = abortClasses([{ contains: ' air', class: 'utility' }]);
  expect(classOf('no air')).toBe('utility');
  expect(classOf('repair')).toBe('unclassified');
});

it('the first row that fits rules, for the same text each time', () => {
  const classOf = abortClasses([{ contains: 'low', class: 'door' }, ...DEFAULT_ABORT_TEXTS]);
  expect([1, 2].map(() => classOf('Temperature low'))).toEqual(['door', 'door']);
  expect(abortClasses(DEFAULT_ABORT_TEXTS)('Temperature low')).toBe('temperature_low');
});
