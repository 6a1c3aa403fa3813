import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Evidence, judge, judgeBeside } from '../../../pipeline/findings/comparisons/verdict.ts';
import { rulesSchema } from '../../../pipeline/site/rules.ts';

const rules = rulesSchema.parse({}).comparison;
const evidence = (changes: Partial<Evidence> = {}): Evidence => ({
  ratio: 3,
  low: 1.4,
  p: 0.001,
  adjustedP: 0.02,
  smallestDetectableRatio: 1.8,
  controlMoved: false,
  mostlyReactive: false,
  exposedDays: 60,
  unexposedDays: 300,
  knownDays: 360,
  ...changes,
});
const verdictOf = (changes: Partial<Evidence>) => judge(evidence(changes), rules).verdict;

describe('the verdict', () => {
  it.each([
    ['shown', {}],
    ['suggested', { controlMoved: true }],
    ['suggested', { adjustedP: 0.2 }],
    ['suggested', { low: 0.9, adjustedP: 0.2, p: 0.04 }],
    ['suggested', { low: 0.9, p: 0.06, adjustedP: 0.05 }],
    ['not_shown', { low: 0.9, p: 0.2, adjustedP: 0.4 }],
    ['not_shown', { low: 0.9, p: 0.04, adjustedP: 0.2, controlMoved: true }],
    ['cannot_tell', { low: 0.9, p: 0.2, adjustedP: 0.4, smallestDetectableRatio: 2.1 }],
    ['cannot_tell', { low: 0.9, p: 0.2, adjustedP: 0.4, smallestDetectableRatio: null }],
    ['cannot_tell', { ratio: null, low: null, p: null, adjustedP: null, smallestDetectableRatio: null }],
    ['cannot_tell', { knownDays: 0, exposedDays: 0, unexposedDays: 0 }],
    ['not_comparable', { mostlyReactive: true }],
    ['not_comparable', { exposedDays: 9 }],
    ['not_comparable', { unexposedDays: 9 }],
    ['not_shown', { ratio: 0.3, low: 0.1, p: 0.001, adjustedP: 0.01 }],
    ['shown', { ratio: Number.POSITIVE_INFINITY }],
  ] as [string, Partial<Evidence>][])('is %s where %o', (verdict, changes) => {
    expect(verdictOf(changes)).toBe(verdict);
  });

  it('falls where another exposure carries the effect, or can’t be told apart', () => {
    const shown = judge(evidence(), rules);
    expect(judgeBeside(shown, ['holds'], 1.8, rules).verdict).toBe('shown');
    expect(judgeBeside(shown, ['holds', 'not_told_apart'], 1.8, rules).verdict).toBe('suggested');
    expect(judgeBeside(shown, ['not_told_apart', 'carried_by_other'], 1.8, rules).verdict).toBe('not_shown');
    expect(judgeBeside(shown, ['carried_by_other'], 3, rules).verdict).toBe('cannot_tell');
  });

  it('never gets stronger as the line for p gets stricter', () => {
    const strength = { cannot_tell: 0, not_shown: 0, not_comparable: 0, suggested: 1, shown: 2 };
    const probability = fc.double({ min: 0.0001, max: 1, noNaN: true });
    fc.assert(
      fc.property(
        probability,
        probability,
        fc.double({ min: 0.2, max: 4, noNaN: true }),
        fc.boolean(),
        (p, more, low, moved) => {
          const of = evidence({
            p,
            adjustedP: Math.min(1, p + more),
            low,
            ratio: low * 2,
            controlMoved: moved,
          });
          const at = (alpha: number) => strength[judge(of, { ...rules, alpha }).verdict];
          expect(at(0.01)).toBeLessThanOrEqual(at(0.05));
          expect(at(0.05)).toBeLessThanOrEqual(at(0.2));
        },
      ),
    );
  });
});
