import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import * as library from '../../pipeline/index.ts';

const FOLDER = new URL('../../pipeline/library/', import.meta.url);

/** The examples of the docstrings, in the order in which a program would write them. */
function examples(): string[] {
  return ['read.ts', 'questions.ts', 'calibration.ts'].flatMap((file) =>
    [...readFileSync(new URL(file, FOLDER), 'utf8').matchAll(/^ \* @example (.+)$/gm)].map(
      (found) => found[1]!,
    ),
  );
}

describe('the public library', () => {
  it('has an example for each function, and they run in order', { timeout: 120_000 }, async () => {
    expect(readdirSync(FOLDER).sort()).toEqual(['calibration.ts', 'questions.ts', 'read.ts']);
    const lines = examples();
    const names = [
      'readSite',
      'readRecords',
      'panel',
      'compare',
      'compareBy',
      'watch',
      'interval',
      'review',
      'calibration',
    ];
    for (const name of names)
      expect(
        lines.some((line) => line.includes(`${name}(`)),
        name,
      ).toBe(true);
    const results = [...lines.join('\n').matchAll(/const (?:\{ (\w+) \}|(\w+)) =/g)].map(
      (found) => found[1] ?? found[2],
    );
    const run = Object.getPrototypeOf(async () => undefined).constructor as new (
      ...args: string[]
    ) => (...args: unknown[]) => Promise<Record<string, unknown>>;
    const body = `${lines.join('\n')}\nreturn { ${results.join(', ')} };`;
    const functions = new Map<string, unknown>(Object.entries(library));
    const answers = await new run(...names, body)(...names.map((name) => functions.get(name)));
    for (const name of results) expect(answers[name!], name).toBeDefined();
    // The demo's built-in effect and drift, as the report shows them.
    const { comparisons, moving, trained } = answers as {
      comparisons: library.Comparison[];
      moving: { unit: string }[];
      trained: library.Measurement;
    };
    expect(comparisons.find(({ id }) => id === 'Q2/chamber_overdue/failed_test')).toMatchObject({
      verdict: 'shown',
      exposed: { days: 173, events: 18 },
      unexposed: { days: 332, events: 7 },
    });
    expect(moving.map(({ unit }) => unit)).toContain('Q4');
    // Every day at risk is on one of the two sides, and the date splits every unit's record once.
    expect(trained.exposed.days + trained.unexposed.days + trained.stratified.notAtRisk).toBe(
      (answers.joined as library.Panel).panel.length,
    );
  });
});
