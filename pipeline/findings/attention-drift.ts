import { formatDay } from '../site/day.ts';
import type { ActionDone } from './actions/actions-done.ts';
import { movesAs } from './drift/cause-pattern.ts';
import type { Drift } from './drift/drift-schema.ts';
import type { Period } from './period.ts';
import type { AttentionReason } from './review-schema.ts';

type Probe = Drift['probes'][number];
type Numbers = AttentionReason['numbers'];

/** A movement whose limit is at least so many days away, at the near end of its interval, is one for later: some three reviews (our choice). */
const FAR_DAYS = 90;

/**
 * Probes of a unit that move in the era in force: those that one cause moves together are one reason, told by the probe nearest to its limit, with the others named. A saw-tooth
 * that cleaning sets back is no reason for a repair, but one for cleaning: it is named as such.
 *
 * @param done actions of the unit's list that were done by the end of the month
 */
export function* movements(
  unit: string,
  drift: Pick<Drift, 'units' | 'probes'>,
  done: readonly ActionDone[],
): Generator<AttentionReason> {
  const moving = drift.probes.filter(
    ({ unit: of, era, state }) =>
      of === unit && era.current && (state === 'near_limit' || state === 'moving'),
  );
  const causes = drift.units.find((of) => of.unit === unit)?.cause?.fits_best ?? [];
  const slope = ({ direction }: Probe) => (direction === 'up' ? 1 : direction === 'down' ? -1 : 0);
  const together = moving.filter((probe) =>
    causes.some((cause) => movesAs(cause, probe.probe, slope(probe))),
  );
  const alone = moving.filter((probe) => !together.includes(probe));
  if (together.length > 0) yield movement(together, causes.join(' or '), done);
  for (const probe of alone) yield movement([probe], null, done);
}

function movement(
  probes: readonly Probe[],
  cause: string | null,
  done: readonly ActionDone[],
): AttentionReason {
  const nearest = ({ days_to_limit }: Probe) =>
    days_to_limit?.low ?? days_to_limit?.days ?? Number.POSITIVE_INFINITY;
  const rank = (probe: Probe) => (probe.state === 'near_limit' ? -1 : nearest(probe));
  const [first, ...others] = probes.toSorted((a, b) => (rank(a) === rank(b) ? 0 : rank(a) - rank(b)));
  const since = probes.map((probe) => probe.since).filter((day) => day !== null);
  const begun = since.toSorted()[0] ?? null;
  const near = first!.state === 'near_limit';
  const isFar = probes.every((probe) => probe.days_to_limit !== null && nearest(probe) >= FAR_DAYS);
  return {
    code: near ? 'drift_near_limit' : 'drift_moving',
    level: !near && isFar ? 'look' : 'decide',
    numbers: {
      ...numbersOf(first!),
      cause,
      ...(others.length > 0 && { with: others.map(({ probe }) => probe).join(' '), with_since: begun }),
      ...doneSince(done, begun),
    },
    comparison: null,
  };
}

/** The last action that was done since a movement began, and how many more were. */
function doneSince(done: readonly ActionDone[], since: string | null): Numbers {
  const after = done.filter((action) => since !== null && action.done_on >= since);
  const last = after.at(-1);
  return last ? { done_action: last.action, done_on: last.done_on, done_more: after.length - 1 } : {};
}

/** Steps of the month in the era in force. */
export function* steps(
  unit: string,
  drift: Pick<Drift, 'probes'>,
  { from }: Period,
): Generator<AttentionReason> {
  for (const probe of drift.probes) {
    if (probe.unit !== unit || !probe.era.current || probe.state !== 'stepped') continue;
    if (probe.since === null || probe.since < formatDay(from)) continue;
    yield {
      code: 'drift_stepped',
      level: 'look',
      numbers: { ...numbersOf(probe), cause: null },
      comparison: null,
    };
  }
}

const numbersOf = (probe: Probe): Numbers => ({
  probe: probe.probe,
  measure: probe.measure,
  direction: probe.direction,
  since: probe.since,
  rate: probe.rate_per_week?.value ?? null,
  rate_low: probe.rate_per_week?.low ?? null,
  rate_high: probe.rate_per_week?.high ?? null,
  days: probe.days_to_limit?.days ?? null,
  days_low: probe.days_to_limit?.low ?? null,
  days_high: probe.days_to_limit?.high ?? null,
  before: probe.step?.before ?? null,
  after: probe.step?.after ?? null,
  falls_back_at: probe.saw_tooth?.falls_back_at ?? null,
});
