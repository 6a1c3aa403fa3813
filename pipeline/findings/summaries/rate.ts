import { clopperPearsonInterval } from '../../statistics/intervals/clopper-pearson-interval.ts';
import { garwoodInterval } from '../../statistics/intervals/garwood-interval.ts';
import type { Rate } from '../review-schema.ts';

/** Share of test days or due tasks, with the exact (Clopper-Pearson) interval. */
export function proportion(events: number, of: number, level: number): Rate {
  return { events, of, ...shown(clopperPearsonInterval(events, of, level)) };
}

/** Events per production cycle, with the exact Poisson (Garwood) interval. */
export function eventRate(events: number, of: number, level: number): Rate {
  return { events, of, ...shown(garwoodInterval(events, of, level)) };
}

function shown(
  outcome: ReturnType<typeof clopperPearsonInterval>,
): Pick<Rate, 'rate' | 'low' | 'high' | 'method'> {
  if (!outcome.computable)
    return { rate: null, low: null, high: null, method: `${outcome.method}: ${outcome.reason}` };
  return {
    rate: outcome.estimate,
    low: outcome.interval.low,
    high: outcome.interval.high,
    method: outcome.method,
  };
}
