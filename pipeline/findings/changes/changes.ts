import type { DueCounts, Review } from '../review-schema.ts';
import type { Changes, Previous } from './changes-schema.ts';
import type { NeededReview } from './previous-review.ts';

/** The parts of this review that are set beside those of the one before. */
export type ReviewNow = Pick<Review, 'units' | 'comparisons' | 'drift' | 'settings'> & {
  cleaning: Pick<Review['cleaning'], 'month'>;
};

/** Sets a review beside the one before. Where there is none, nothing moved and `previous` says why. */
export function changesSince(previous: Previous, before: NeededReview | null, now: ReviewNow): Changes {
  if (!before)
    return {
      previous,
      verdicts: [],
      verdicts_same: 0,
      drift: [],
      drift_same: 0,
      attention: [],
      cleaning: [],
      settings: [],
      units_new: [],
      units_gone: [],
    };
  const verdicts = pairs(before.comparisons, now.comparisons, (of) => of.id).map(([was, is]) => {
    const { id, unit, exposure, outcome } = (is ?? was)!;
    return {
      id,
      unit,
      exposure,
      outcome,
      before: was?.verdict ?? null,
      now: is?.verdict ?? null,
      ratio_before: was?.ratio ?? null,
      ratio_now: is?.ratio ?? null,
    };
  });
  const inForce = <Row extends { era: { current: boolean } }>(rows: readonly Row[]) =>
    rows.filter((row) => row.era.current);
  const drift = pairs(
    inForce(before.drift.probes),
    inForce(now.drift.probes),
    (of) => `${of.unit}\u0000${of.probe}`,
  ).map(([was, is]) => ({
    unit: (is ?? was)!.unit,
    probe: (is ?? was)!.probe,
    before: was?.state ?? null,
    now: is?.state ?? null,
    new_era: was !== undefined && is !== undefined && was.era.index !== is.era.index,
  }));
  const moved = <Row extends { before: unknown; now: unknown }>(rows: readonly Row[]) =>
    rows.filter((row) => row.before !== row.now);
  const ids = (of: readonly { unit: string }[]) => new Set(of.map((unit) => unit.unit));
  const [unitsBefore, unitsNow] = [ids(before.units), ids(now.units)];
  return {
    previous,
    verdicts: moved(verdicts),
    verdicts_same: verdicts.length - moved(verdicts).length,
    drift: moved(drift),
    drift_same: drift.length - moved(drift).length,
    attention: attentionChanges(before.units, now.units),
    cleaning: pairs(before.cleaning.month, now.cleaning.month, (of) => `${of.unit}\u0000${of.task}`).map(
      ([was, is]) => ({
        unit: (is ?? was)!.unit,
        task: (is ?? was)!.task,
        before: was ? dueOf(was) : null,
        now: is ? dueOf(is) : null,
        moved: movedOf(was, is),
      }),
    ),
    settings: moved(
      pairs(before.settings, now.settings, (of) => of.name).map(([was, is]) => ({
        name: (is ?? was)!.name,
        before: was?.value ?? null,
        now: is?.value ?? null,
      })),
    ),
    units_new: [...unitsNow].filter((unit) => !unitsBefore.has(unit)),
    units_gone: [...unitsBefore].filter((unit) => !unitsNow.has(unit)),
  };
}

function attentionChanges(
  before: NeededReview['units'],
  now: readonly Pick<Review['units'][number], 'unit' | 'attention'>[],
): Changes['attention'] {
  type Reason = NeededReview['units'][number]['attention'][number];
  const flat = (units: readonly { unit: string; attention: readonly Reason[] }[]) =>
    units.flatMap(({ unit, attention }) =>
      attention.map((reason) => ({
        unit,
        code: reason.code,
        level: reason.level,
        about: reason.comparison ?? (typeof reason.numbers.probe === 'string' ? reason.numbers.probe : null),
      })),
    );
  return pairs(flat(before), flat(now), (of) => `${of.unit}\u0000${of.code}\u0000${of.about}`).map(
    ([was, is]) => ({
      unit: (is ?? was)!.unit,
      code: (is ?? was)!.code,
      about: (is ?? was)!.about,
      change: was === undefined ? 'new' : is === undefined ? 'gone' : 'stays',
      level_before: was?.level ?? null,
      level_now: is?.level ?? null,
    }),
  );
}

const dueOf = (of: Omit<DueCounts, 'contradicted' | 'open'>) => ({
  due: of.due,
  done: of.done + of.done_late,
  missed: of.missed,
  not_recorded: of.not_recorded,
});

/** Whether a smaller or larger share of the due tasks was missed; with nothing due on one side there is nothing to compare. */
function movedOf(
  was: Pick<DueCounts, 'due' | 'missed'> | undefined,
  is: Pick<DueCounts, 'due' | 'missed'> | undefined,
): Changes['cleaning'][number]['moved'] {
  if (!was || !is || was.due === 0 || is.due === 0) return 'same';
  const difference = is.missed * was.due - was.missed * is.due;
  return difference > 0 ? 'more_missed' : difference < 0 ? 'fewer_missed' : 'same';
}

/** Rows of one key beside each other: in the order of now, then those that are only before. Of a repeated key the first counts. */
function pairs<Before, Now>(
  before: readonly Before[],
  now: readonly Now[],
  key: (of: Before | Now) => string,
): [Before | undefined, Now | undefined][] {
  const byKey = new Map<string, [Before | undefined, Now | undefined]>();
  for (const row of now) if (!byKey.has(key(row))) byKey.set(key(row), [undefined, row]);
  for (const row of before) {
    const pair = byKey.get(key(row));
    if (!pair) byKey.set(key(row), [row, undefined]);
    else pair[0] ??= row;
  }
  return [...byKey.values()];
}
