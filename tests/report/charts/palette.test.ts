import { describe, expect, it } from 'vitest';
import { dueStateLook, palette } from '../../../pipeline/report/charts/palette.ts';
import { en } from '../../../pipeline/report/words/en.ts';

const channel = (value: number): number => {
  const share = value / 255;
  return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
};

/** Relative luminance: WCAG 2.2, definition of relative luminance. */
function luminance(hex: string): number {
  const [red, green, blue] = [1, 3, 5].map((at) => channel(Number.parseInt(hex.slice(at, at + 2), 16)));
  return 0.2126 * red! + 0.7152 * green! + 0.0722 * blue!;
}

/** Contrast ratio: WCAG 2.2, success criterion 1.4.3. */
function contrast(a: string, b: string): number {
  const [light, dark] = [luminance(a), luminance(b)].sort((x, y) => y - x) as [number, number];
  return (light + 0.05) / (dark + 0.05);
}

describe('palette', () => {
  // WCAG 2.2, 1.4.3: 21 to 1 between black and white; 4.48 for #777777 on white is the well known near miss.
  it('is measured by the formula of WCAG', () => {
    expect(contrast('#000000', '#ffffff')).toBeCloseTo(21, 10);
    expect(contrast('#777777', '#ffffff')).toBeCloseTo(4.48, 2);
  });

  it.each(['ink', 'muted', 'series', 'failure', 'cleaning', 'contradicted', 'service'] as const)(
    'writes and draws with %s at 4.5 to 1 or more on paper',
    (name) => {
      expect(contrast(palette[name], palette.paper)).toBeGreaterThanOrEqual(4.5);
    },
  );

  it('sets each letter of a state off its ground', () => {
    for (const [state, look] of Object.entries(dueStateLook)) {
      if (state !== 'done') expect(contrast(look.fill, look.letterColour), state).toBeGreaterThanOrEqual(4.5);
    }
  });

  it('gives each state but done a letter of its own, as done is the ground that the others stand out from', () => {
    for (const { terms } of [en]) {
      const letters = Object.values(terms.dueLetter);
      expect(new Set(letters).size).toBe(letters.length);
      expect(terms.dueLetter.done).toBe('');
    }
  });

  it('tells done, late and missed apart in grey print', () => {
    const grey = (['done', 'done_late', 'missed'] as const).map((state) =>
      luminance(dueStateLook[state].fill),
    );
    expect(grey[2]!).toBeLessThan(0.2);
    expect(grey[0]!).toBeGreaterThan(0.7);
    expect(contrast(dueStateLook.done.line, '#ffffff')).toBeGreaterThan(1.5);
  });
});
