import type { DueCounts } from '../../findings/review-schema.ts';

/**
 * The colours of the report. Chosen so that neighbours differ in lightness as well as in hue (checked in the tests for the three common kinds of
 * colour blindness and in grey); no chart leans on colour alone: a letter, a shape or a word stands beside it.
 */
export const palette = {
  ink: '#17262e',
  muted: '#52626b',
  rule: '#c9d2d6',
  grid: '#e6ebed',
  paper: '#ffffff',
  /** Series, intervals, neutral marks. */
  series: '#23536b',
  seriesPale: '#d7e5ec',
  /** Failures and what is missed. */
  failure: '#a4370f',
  /** Cleaning events. */
  cleaning: '#1c7c70',
  overdue: '#f0b95b',
  contradicted: '#64379b',
  service: '#3a3a3a',
} as const;

export type DueState = Exclude<keyof DueCounts, 'unit' | 'task' | 'due'>;

/** How a state of a due task is drawn everywhere: fill, line and the colour of its letter, which the catalogue of words gives. */
export const dueStateLook: Record<DueState, { fill: string; line: string; letterColour: string }> = {
  done: { fill: '#dbe9ef', line: '#b9d0da', letterColour: palette.ink },
  done_late: { fill: '#e8bb55', line: '#a97c17', letterColour: palette.ink },
  missed: { fill: palette.failure, line: palette.failure, letterColour: '#ffffff' },
  not_recorded: { fill: '#ffffff', line: palette.muted, letterColour: palette.ink },
  contradicted: {
    fill: palette.contradicted,
    line: palette.contradicted,
    letterColour: '#ffffff',
  },
  open: { fill: '#ffffff', line: '#b9d0da', letterColour: palette.muted },
};

/** A day of use on which nothing was due. */
export const notDueLook = { fill: '#f4f6f7', line: '#f4f6f7' } as const;

/** Shapes of events, the same in every chart. */
export const eventShape = {
  failure: 'diamond',
  cleaning: 'triangle-up',
  service: 'square',
  abort: 'circle',
} as const;
