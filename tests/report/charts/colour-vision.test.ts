import { describe, expect, it } from 'vitest';
import { dueStateLook, palette } from '../../../pipeline/report/charts/palette.ts';

type Triple = [number, number, number];
type Matrix = [Triple, Triple, Triple];

/**
 * Simulation of colour blindness in linear RGB: Machado, Oliveira and Fernandes 2009, "A physiologically-based model for simulation of color vision
 * deficiency", IEEE Transactions on Visualization and Computer Graphics 15, severity 1.0. Protan and deutan as in the tables that graphics programs
 * publish; tritan from memory, its rows sum to 1 (white stays white).
 */
const MACHADO: Record<'protan' | 'deutan' | 'tritan', Matrix> = {
  protan: [
    [0.152286, 1.052583, -0.204868],
    [0.114503, 0.786281, 0.099216],
    [-0.003882, -0.048116, 1.051998],
  ],
  deutan: [
    [0.367322, 0.860646, -0.227968],
    [0.280085, 0.672501, 0.047413],
    [-0.01182, 0.04294, 0.968881],
  ],
  tritan: [
    [1.255528, -0.076749, -0.178779],
    [-0.078411, 0.930809, 0.147602],
    [0.004733, 0.691367, 0.3039],
  ],
};

/** Linear RGB to XYZ, D65: IEC 61966-2-1. */
const XYZ: Matrix = [
  [0.4124564, 0.3575761, 0.1804375],
  [0.2126729, 0.7151522, 0.072175],
  [0.0193339, 0.119192, 0.9503041],
];

const times = (matrix: Matrix, vector: Triple): Triple =>
  matrix.map((row) => row.reduce((sum, value, at) => sum + value * vector[at]!, 0)) as Triple;

function linear(hex: string): Triple {
  return [1, 3, 5].map((at) => {
    const value = Number.parseInt(hex.slice(at, at + 2), 16) / 255;
    return value <= 0.04045 ? value / 12.92 : ((value + 0.055) / 1.055) ** 2.4;
  }) as Triple;
}

/** CIE 1976 L*a*b*, white D65. */
function lab(rgb: Triple): Triple {
  const [x, y, z] = times(XYZ, rgb.map((value) => Math.min(1, Math.max(0, value))) as Triple);
  const f = (t: number) => (t > 216 / 24389 ? Math.cbrt(t) : ((24389 / 27) * t + 16) / 116);
  const [fx, fy, fz] = [f(x / 0.95047), f(y), f(z / 1.08883)];
  return [116 * fy - 16, 500 * (fx - fy), 200 * (fy - fz)];
}

const difference = (a: Triple, b: Triple): number => Math.hypot(...a.map((value, at) => value - b[at]!));
const lightness = (hex: string): number => lab(linear(hex))[0];

/** Colours that stand in one chart. A difference of 2.3 is just seen (Mahy and others 1994); small marks need several times that. */
const TOGETHER: [string, string][] = [
  [palette.series, palette.failure],
  [palette.series, palette.cleaning],
  [palette.series, palette.contradicted],
  [palette.series, palette.overdue],
  [palette.failure, palette.cleaning],
  [palette.failure, palette.overdue],
  [palette.failure, palette.contradicted],
  [palette.failure, palette.service],
  [palette.failure, palette.seriesPale],
  [palette.failure, palette.ink],
  [palette.cleaning, palette.overdue],
  [palette.cleaning, palette.contradicted],
  [dueStateLook.done.fill, dueStateLook.done_late.fill],
  [dueStateLook.done.fill, dueStateLook.missed.fill],
  [dueStateLook.done_late.fill, dueStateLook.missed.fill],
  [dueStateLook.contradicted.fill, dueStateLook.missed.fill],
];

describe('colours under colour blindness', () => {
  it.each(Object.entries(MACHADO))('keeps white white and grey grey (%s)', (_, matrix) => {
    for (const grey of ['#ffffff', '#808080']) {
      const seen = times(matrix, linear(grey));
      for (const [at, value] of seen.entries()) expect(value).toBeCloseTo(linear(grey)[at]!, 4);
    }
  });

  // CIE 15: L* of sRGB #777777 is 50.0; pure red is (53.24, 80.09, 67.20), the value that colour libraries print.
  it('measures as CIE L*a*b* does', () => {
    const red = lab(linear('#ff0000'));
    expect(red[0]).toBeCloseTo(53.24, 1);
    expect(red[1]).toBeCloseTo(80.09, 1);
    expect(red[2]).toBeCloseTo(67.2, 1);
    expect(lightness('#777777')).toBeCloseTo(50, 0);
  });

  it('merges red and green of one lightness, as protan and deutan eyes do', () => {
    const red = '#c8643c';
    const green = '#7d8c3c';
    expect(difference(lab(linear(red)), lab(linear(green)))).toBeGreaterThan(50);
    expect(
      difference(lab(times(MACHADO.deutan, linear(red))), lab(times(MACHADO.deutan, linear(green)))),
    ).toBeLessThan(25);
  });

  it.each(Object.entries(MACHADO))('tells apart what stands in one chart (%s)', (_, matrix) => {
    for (const [a, b] of TOGETHER)
      expect(
        difference(lab(times(matrix, linear(a))), lab(times(matrix, linear(b)))),
        `${a} and ${b}`,
      ).toBeGreaterThan(15);
  });

  it('sets parts of a bar that touch apart in grey print by ten steps of lightness', () => {
    const { done, done_late, missed, not_recorded, contradicted, open } = dueStateLook;
    for (const [a, b] of [
      [done, done_late],
      [done, missed],
      [done_late, missed],
      [missed, not_recorded],
      [not_recorded, contradicted],
      [contradicted, open],
      [done_late, not_recorded],
    ] as const)
      expect(Math.abs(lightness(a.fill) - lightness(b.fill)), `${a.fill} and ${b.fill}`).toBeGreaterThan(10);
  });
});
