import type { UnitDay } from '../../transform/panel/unit-day.ts';

/** What belongs to a stratum. */
type StratumOf = Pick<UnitDay, 'unit' | 'era' | 'stratum'>;

/**
 * Something for each stratum of panel rows, such as its counts, in order of first appearance. Most rows belong to the stratum of the one before, and no text is made to look theirs up: there may be
 * millions.
 */
export class StratumGroups<Group> {
  readonly #known = new Map<string, Group>();
  readonly #make: () => Group;
  #last: (StratumOf & { split: number; group: Group }) | undefined;

  /** @param make what a stratum has when its first row comes */
  constructor(make: () => Group) {
    this.#make = make;
  }

  /** @param split number of the part of the stratum, where strata are split further */
  of({ unit, era, stratum }: StratumOf, split = 0): Group {
    const last = this.#last;
    if (last && last.stratum === stratum && last.split === split && last.era === era && last.unit === unit)
      return last.group;
    const key = `${unit}\u0000${era}\u0000${stratum}\u0000${split}`;
    const group = this.#known.get(key) ?? this.#make();
    this.#known.set(key, group);
    this.#last = { unit, era, stratum, split, group };
    return group;
  }

  all(): Group[] {
    return [...this.#known.values()];
  }
}
