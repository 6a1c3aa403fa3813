import { type Holds, recordMeanings } from './compose-record.ts';
import { foldPhrase } from './fold-phrase.ts';

/** Parts of which names of columns are put together, with the stems of their words in all languages. */
export type Parts = ReadonlyMap<string, readonly string[]>;

/** A name that no phrase of the vocabulary covers, understood by its parts: never more than likely. */
export const COMPOSED_SCORE = 0.8;
/** In place of the phrase to which a name is near. */
export const BY_PARTS = 'its parts';

const PHASES: Readonly<Record<string, string>> = {
  evacuation: 'evacuation_s',
  heating: 'heat_up_s',
  exposure: 'exposure_s',
  exhaust: 'exhaust_s',
  drying: 'drying_s',
};

/** What the header or its numbers say beside the words. */
export interface Beside {
  /** Whether the numbers are temperatures of exposure, which tells what a mere "t" is; undefined where there are no numbers. */
  hot: boolean | undefined;
  /** The unit of measure in the header is one of these. */
  said: 'duration' | 'temperature' | 'pressure' | 'leak' | undefined;
  /** What the cells hold; left out: not known. */
  holds?: Holds | undefined;
}

/** Units of measure as words by themselves; they are read elsewhere. */
const MEASURE =
  /^(?:kpa|hpa|mbar|bar|m?bara|m?barg|psi|psia|psig|mmhg|inhg|torr|abs|rel|gauge|deg[cf]|sec|secs|sek|seg|mm|ss|hh|[acfgs])$/;

/** Words that join others and say nothing in a name of a column. */
const JOINING: ReadonlySet<string> = new Set(
  (
    'of the in at on for and is der des die das im am um in ab seit und de du des d l la le les en et au aux ' +
    'del el los las y se fue betrieb cd cde nm nme fld'
  ).split(' '),
);

/**
 * What a name of a column says by its parts: "t_evac_s" has the part of evacuation and one that may be time, "Lo temp" the lowest and temperature, "Chargenstart" the
 * cycle and its start. One word that is not known is let pass where two are; names with a word for something else (jacket, set point, load) say nothing.
 *
 * @param header without its unit of measure
 */
export function composedMeanings(header: string, parts: Parts, { hot, said, holds }: Beside): string[] {
  const all = foldPhrase(header)
    .split(' ')
    .filter((token, at) => token !== '' && !JOINING.has(token) && !(at > 0 && MEASURE.test(token)));
  // "heat_min": minutes, where the numbers are no temperatures of exposure and a phase stands before.
  const minutes = all.length > 1 && all.at(-1) === 'min' && hot === false && said !== 'temperature';
  const tokens = minutes ? all.slice(0, -1) : all;
  if (tokens.length === 0 || tokens.length > 6) return [];
  const known = tokens.map((token) => partsOf(token, parts));
  const found = new Set(known.flat());
  const strange = known.filter((list) => list.length === 0).length;
  if (said === 'leak')
    return found.has('allowed') || found.has('highest') ? ['limit_kpa_min'] : ['leak_rate_kpa_min'];
  if (found.has('requalified') && holds !== 'dates') return ['major'];
  const ofLeak = leakMeanings(found, said, holds);
  if (ofLeak) return ofLeak;
  const ofRecord = strange > 1 ? [] : recordMeanings(asOne(found), holds);
  if (ofRecord.length > 0) return ofRecord;
  if (found.has('other') || strange > 1 || (strange === 1 && tokens.length < 3 && !isTelling(found)))
    return [];
  const has = (...names: string[]): boolean => names.every((name) => found.has(name));
  const phases = Object.keys(PHASES).filter((phase) => found.has(phase));
  const [phase] = phases;
  const stat = found.has('lowest') !== found.has('highest');
  const also = has('unit') && !has('cycle') && !has('kind') ? ['unit'] : [];
  // A mere "t" is a temperature where the numbers are, or where it is the lowest or highest of something.
  const temperature =
    said === 'temperature' ||
    (said === undefined &&
      (has('temperature') || (has('t') && !has('time') && (hot === true || (stat && hot !== false)))));
  if (has('drain') && temperature) return ['drain_temperature_c'];
  if (found.has('drain') || phases.length > 1) return also;
  if (temperature && stat && (phase === undefined || phase === 'exposure'))
    return [has('lowest') ? 'exposure_temperature_min_c' : 'exposure_temperature_max_c'];
  if (temperature) return also;
  if (said !== 'duration') {
    if (phase === 'drying' && (has('pressure') || has('vacuum'))) return ['dry_vacuum_kpa'];
    // At the start and end of a test, or by its number, it is no pressure of an exposure.
    if (has('pressure'))
      return phase === 'exposure' || (phase === undefined && !has('start') && !has('end') && !has('number'))
        ? ['exposure_pressure_kpa']
        : also;
  }
  if (said === 'pressure' && !stat && !has('vacuum') && (phase === 'exposure' || onlyFiller(known)))
    return ['exposure_pressure_kpa'];
  if (stat || said === 'pressure') return also;
  if (has('start') !== has('end'))
    return phase === undefined && !has('number') ? [has('start') ? 'start' : 'end'] : [];
  if (phase !== undefined && !has('number') && !has('kind') && !has('outcome'))
    return [PHASES[phase]!, ...also];
  if (has('vacuum')) return also;
  if (has('alarm')) return has('number') ? [] : ['abort_text'];
  if (has('cycle', 'outcome')) return ['outcome'];
  if (has('cycle', 'kind') || (has('program') && !has('number'))) return ['kind'];
  if (has('cycle', 'number')) return ['cycle_number'];
  return also;
}

/** Of a leak test: the rise of pressure or its limit; undefined where the name speaks of neither. */
function leakMeanings(
  found: ReadonlySet<string>,
  said: Beside['said'],
  holds: Holds | undefined,
): string[] | undefined {
  if (holds !== 'numbers' || said === 'duration' || said === 'temperature') return undefined;
  if (!found.has('leak') && !(found.has('rise') && found.has('pressure'))) return undefined;
  if (found.has('number') || found.has('start') || found.has('end') || found.has('time')) return undefined;
  return found.has('allowed') || found.has('highest') ? ['limit_kpa_min'] : ['leak_rate_kpa_min'];
}

/** The parts with all phases as one. */
const asOne = (found: ReadonlySet<string>): ReadonlySet<string> =>
  Object.keys(PHASES).some((phase) => found.has(phase)) ? new Set([...found, 'phase']) : found;

const onlyFiller = (known: readonly (readonly string[])[]): boolean =>
  known.every((list) => list.includes('filler'));

/** Whether a name speaks of the jacket, the supply or a set value: what it is merely near to is no reading of the chamber. */
export const isElsewhere = (header: string, parts: Parts): boolean => partsIn(header, parts).has('elsewhere');

/** All parts that a name speaks of. */
export const partsIn = (header: string, parts: Parts): Set<string> =>
  new Set(
    foldPhrase(header)
      .split(' ')
      .flatMap((token) => partsOf(token, parts)),
  );

/** Fields that are readings of the chamber. */
export const isReading = (field: string): boolean => /_(?:s|c|kpa)$/.test(field);

/** Parts that say enough beside a word that is not known: "Work Started", "Washer/Ster". */
const isTelling = (found: ReadonlySet<string>): boolean =>
  ['unit', 'start', 'end', 'alarm', 'program'].some((part) => found.has(part));

function partsOf(token: string, parts: Parts): string[] {
  const found: string[] = [];
  for (const [part, stems] of parts) if (stems.some((stem) => isIn(token, stem))) found.push(part);
  return found;
}

/**
 * A stem of three letters or more may begin a word, one of four may end it, one of six stand inside it, as German joins words. Short ones are whole words, and so is
 * one with = in front.
 */
const isIn = (token: string, stem: string): boolean =>
  stem.startsWith('=')
    ? token === stem.slice(1)
    : token === stem ||
      (stem.length >= 3 && token.startsWith(stem)) ||
      (stem.length >= 4 && token.endsWith(stem)) ||
      (stem.length >= 6 && token.includes(stem));
