import { type Guess, likely } from './guess.ts';
import type { ProposedColumn, ProposedSource } from './proposal.ts';

type Order = 'day first' | 'month first';

/** Languages in which a date of numbers begins with its day where it does not begin with its year (locale data of the CLDR; from memory). */
const DAY_FIRST: Readonly<Record<string, string>> = { de: 'German', fr: 'French', es: 'Spanish' };

/**
 * Days from 1 to 12 alone leave open which number is the day. Where the other tables prove one order, and none another, it is likely that of this table too; else the
 * language of its names or the full stops between the numbers speak for the day first. Never certain; open where nothing speaks.
 */
export function agreeOnDates(sources: readonly ProposedSource[]): ProposedSource[] {
  const proved = sources.flatMap((source) =>
    source.columns.flatMap(({ dates }) => {
      const order = dates?.confidence === 'certain' ? orderOf(dates.value) : undefined;
      return order === undefined ? [] : [{ order, found: source.found[0]! }];
    }),
  );
  const [first] = proved;
  const common = proved.every(({ order }) => order === first?.order) ? first : undefined;
  return sources.map((source) => {
    const spoken = DAY_FIRST[source.language ?? ''];
    const columns = source.columns.map((column): ProposedColumn => {
      const { dates } = column;
      if (dates?.confidence !== 'open') return column;
      const told = common
        ? choose(dates, common.order, `as in ${common.found}, which proves it`)
        : proved.length > 0
          ? undefined
          : spoken !== undefined
            ? choose(dates, 'day first', `the day stands first where the words are ${spoken}`)
            : dates.options.every((option) => /^d+\.|^M+\./.test(option))
              ? choose(dates, 'day first', 'with full stops the day stands first')
              : undefined;
      return told ? { ...column, dates: told } : column;
    });
    return { ...source, columns };
  });
}

/** The order that a pattern of numbers with the year last gives day and month; undefined for others. */
function orderOf(pattern: string | undefined): Order | undefined {
  const orders = (pattern ?? '').split(' | ').map((one) => {
    const date = /^(?:EEE,? )?(d+|M+)(\P{L}+)(d+|M+)\2y/u.exec(one);
    if (!date || date[0].includes('MMM') || date[1]![0] === date[3]![0]) return undefined;
    return date[1]!.startsWith('d') ? 'day first' : 'month first';
  });
  const known = [...new Set(orders.filter((order) => order !== undefined))];
  return known.length === 1 ? known[0] : undefined;
}

/** The one choice that has the order. */
function choose(dates: Guess<string>, order: Order, why: string): Guess<string> | undefined {
  const same = dates.options.filter((option) => orderOf(option) === order);
  return same.length === 1 ? likely(same[0]!, why, dates.options) : undefined;
}
