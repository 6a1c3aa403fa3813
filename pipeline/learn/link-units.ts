import { foldName } from '../site/unit-names.ts';
import { doubtedNames } from './doubted-names.ts';
import type { Proposal, ProposedSource, SiteChoice, UnitLink } from './proposal.ts';

/** So many names are asked about; more are those of something else than units. */
const MOST_LINKS = 40;

/**
 * Names of units that stand in tests, cleanings and the rest but in no log of cycles: another name of a unit of the cycles, or a unit of its own. The files can't
 * tell, so each is a question; the number in the name speaks for one of them ("1" or "Sterilizer 1" for "STER-01"). So is a name of the cycles that may be a slip of
 * another. None where there are no cycles.
 */
export function unitLinks(sources: readonly ProposedSource[]): UnitLink[] {
  const cycles = sources.filter(({ kind }) => kind.value === 'cycles');
  const known = distinct(cycles.flatMap(({ units }) => units));
  if (known.length === 0) return [];
  return [...doubtedLinks(known, cycles), ...strangeLinks(known, sources)];
}

/** Names of the cycles that may be slips. */
function doubtedLinks(known: readonly string[], cycles: readonly ProposedSource[]): UnitLink[] {
  const rows = new Map(known.map((name) => [name, rowsOf(name, cycles)]));
  return doubtedNames(rows).map(
    ({ name, near, why }): UnitLink => ({
      name,
      site: undefined,
      found: filesWith(name, cycles),
      units: known,
      near,
      doubt: why,
      unit: undefined,
    }),
  );
}

function strangeLinks(known: readonly string[], sources: readonly ProposedSource[]): UnitLink[] {
  const folded = new Set(known.map(foldName));
  const others = sources.filter(({ kind }) => kind.value !== 'cycles' && kind.value !== 'water');
  const strange = distinct(others.flatMap(({ units }) => units)).filter(
    (name) => !folded.has(foldName(name)),
  );
  if (strange.length === 0 || strange.length > MOST_LINKS) return [];
  const byKey = uniqueKeys(known);
  const ownKeys = uniqueKeys(strange);
  return strange.map((name): UnitLink => {
    const key = keyOf(name);
    const near = key !== undefined && ownKeys.has(key) ? byKey.get(key) : undefined;
    return {
      name,
      site: undefined,
      found: filesWith(name, others),
      units: known,
      near,
      doubt: undefined,
      unit: undefined,
    };
  });
}

/** The first file or sheet of each source that has the name. */
const filesWith = (name: string, sources: readonly ProposedSource[]): string[] =>
  sources
    .filter(({ units }) => units.some((unit) => foldName(unit) === foldName(name)))
    .map(({ found }) => found[0]!);

/** Rows that have the name of a unit, in any writing. */
export function rowsOf(name: string, sources: readonly ProposedSource[]): number {
  let rows = 0;
  for (const { unitRows } of sources)
    for (const [unit, count] of unitRows) if (foldName(unit) === foldName(name)) rows += count;
  return rows;
}

/** A proposal whose sources have changed: names of units are looked at anew, and what was said of them stays. Where there are several sites, or may be, nothing changes. */
export function relinked(proposal: Proposal): Proposal {
  if (proposal.sites.length > 1 || proposal.siteChoices.length > 0) return proposal;
  const said = new Map(proposal.unitLinks.map((link) => [link.name, link.unit]));
  return {
    ...proposal,
    unitLinks: unitLinks(proposal.sources).map((link) => ({ ...link, unit: said.get(link.name) })),
  };
}

/** The one number of a unit's name, without leading zeros. */
function keyOf(name: string): string | undefined {
  const numbers = name.match(/\d+/g) ?? [];
  return numbers.length === 1 ? String(Number(numbers[0])) : undefined;
}

/** Names by the number in them, where no other has the same. */
function uniqueKeys(names: readonly string[]): Map<string, string> {
  const found = new Map<string, string | undefined>();
  for (const name of names) {
    const key = keyOf(name);
    if (key !== undefined) found.set(key, found.has(key) ? undefined : name);
  }
  return new Map([...found].filter((entry): entry is [string, string] => entry[1] !== undefined));
}

function distinct(names: readonly string[]): string[] {
  const found = new Map<string, string>();
  for (const name of names)
    if (!found.has(foldName(name))) found.set(foldName(name), name.trim().replace(/\s+/g, ' '));
  return [...found.values()].sort();
}

/** A proposal of one site, or of several in one of the ways in which it may be so. Each site's names of units are its own. */
export function withSites(proposal: Proposal, choice: SiteChoice | 'one'): Proposal {
  if (choice === 'one') return { ...proposal, siteChoices: [] };
  const { sites, sources, units } = choice;
  const links = sites.flatMap((site) => {
    const own = new Set(units.filter((unit) => unit.site === site).map(({ name }) => foldName(name)));
    const ofSite = sources
      .filter((source) => source.site === site)
      .map((source) => ({ ...source, units: source.units.filter((name) => own.has(foldName(name))) }));
    return unitLinks(ofSite).map((link): UnitLink => ({ ...link, site }));
  });
  return { ...proposal, siteChoices: [], sites, sources, units, unitLinks: links };
}
