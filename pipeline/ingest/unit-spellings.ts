import type { Water } from '../site/records.ts';
import type { Site } from '../site/site.ts';
import { foldName } from '../site/unit-names.ts';
import type { Column, FileColumns } from './file-columns.ts';

/**
 * One spelling for each unit where the site file declares none: that of a cleaning policy, else the one that comes first in order of source, file and row. Names that
 * differ in letter case, runs of blanks and the encoding of accents alone are of one unit. Files are read, and kept, as they are spelled: only here one file meets the others.
 */
export class UnitSpellings {
  /** Undefined where units are declared: then a record has the id of its unit already. */
  readonly #first: Map<string, string> | undefined;

  constructor({ unitIds, declared }: Pick<Site, 'unitIds' | 'declared'>) {
    if (unitIds) return;
    this.#first = new Map();
    for (const name of declared.cleaning.flatMap(({ units }) => units ?? [])) this.#spell(name);
  }

  /** The columns of a file with units so spelled; to be asked of each file, in order of source and file. */
  respelled(of: FileColumns): FileColumns {
    if (!this.#first) return of;
    const columns = of.columns.map(([name, column]): [string, Column] =>
      name === 'unit' && column.type === 'words'
        ? [name, { ...column, words: column.words.map((word) => this.#spell(word)) }]
        : [name, column],
    );
    return { ...of, columns };
  }

  /** Samples of water, with units served that other records know so spelled; to be asked when all files have been. */
  served(samples: readonly Water[]): Water[] {
    const first = this.#first;
    if (!first) return [...samples];
    return samples.map((sample) =>
      sample.units === undefined
        ? sample
        : {
            ...sample,
            units: sample.units.replace(/[^\s,;]+/g, (name) => first.get(foldName(name)) ?? name),
          },
    );
  }

  /** The spelling of a name, which is its own where it is the first. */
  #spell(name: string): string {
    const folded = foldName(name);
    const known = this.#first!.get(folded);
    if (known !== undefined) return known;
    this.#first!.set(folded, name);
    return name;
  }
}
