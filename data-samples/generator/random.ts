import { uniformFloat64 } from 'pure-rand/distribution/uniformFloat64';
import { uniformInt } from 'pure-rand/distribution/uniformInt';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import { SEED } from './scenario.ts';

/** A stream of random numbers with a name. Streams of different names are independent, so a new draw in one aspect moves no other. */
export interface Stream {
  /** Uniform in [0, 1). */
  float(): number;
  /** Whole number, both ends included. */
  int(from: number, to: number): number;
  chance(probability: number): boolean;
  /** Normal with mean 0 and standard deviation 1 (Box-Muller). */
  normal(): number;
  pick<T>(items: readonly T[]): T;
}

export function stream(name: string): Stream {
  const generator = xoroshiro128plus(hash(`${SEED}/${name}`));
  const float = () => uniformFloat64(generator);
  const int = (from: number, to: number) => uniformInt(generator, from, to);
  return {
    float,
    int,
    chance: (probability) => float() < probability,
    normal: () => Math.sqrt(-2 * Math.log(1 - float())) * Math.cos(2 * Math.PI * float()),
    pick: (items) => items[int(0, items.length - 1)]!,
  };
}

/** FNV-1a, 32 bit. */
function hash(text: string): number {
  let value = 0x811c9dc5;
  for (let index = 0; index < text.length; index++) {
    value ^= text.charCodeAt(index);
    value = Math.imul(value, 0x01000193);
  }
  return value | 0;
}
