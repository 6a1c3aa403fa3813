import type { TopLevelSpec } from 'vega-lite';
import { fitText } from '../html/html.ts';

/** Stands between the unit and the words in the one text that a mark can carry through the renderer. */
const BETWEEN = '\u241f';

/** What a mark says of itself, and the unit that it belongs to, empty where that is no single one. */
export interface Told {
  unit: string;
  tip: string;
}

/** Words and unit as the one text of a row's field `told`; an empty field says nothing. */
export function toldText({ unit, tip }: Told): string {
  return `${unit.replaceAll(BETWEEN, ' ')}${BETWEEN}${tip}`;
}

/** Stands between the words of one mark and the next, where a single path draws many. */
const NEXT = '\u241e';

/** Words of many marks that a single path draws, in its order, and the unit of all of them. */
export function toldListText(unit: string, tips: readonly string[]): string {
  return toldText({ unit, tip: `${NEXT}${tips.join(NEXT)}` });
}

/** Mark property and channel by which the marks of a layer carry their words; the rows need `told`. */
export const toldMark = { aria: true } as const;
export const toldChannel = { description: { field: 'told', type: 'nominal' } } as const;

/** Attributes for the text of a mark as the renderer wrote it, escaped: words, of many marks each on a line, and the unit where there is one. What the renderer says by itself is left out. */
export function toldAttributes(escaped: string): string {
  const at = escaped.indexOf(BETWEEN);
  if (at < 0) return '';
  const unit = escaped.slice(0, at);
  const words = escaped.slice(at + 1);
  const tips = words.startsWith(NEXT)
    ? `data-tips="${words.slice(1).replaceAll(NEXT, '\n')}"`
    : `data-tip="${words}"`;
  return ` ${tips}${unit === '' ? '' : ` data-unit="${unit}"`}`;
}

/** The time that the axis of a chart spans, first day and the day after the last, counted from 1970. */
export interface TimeSpan {
  from: number;
  to: number;
}

/** What a specification carries for the picture's root: it stands in Vega-Lite's place for what is not its own. */
export function timeMeta({ from, to }: TimeSpan): { usermeta: { time: string } } {
  return { usermeta: { time: `${from} ${to}` } };
}

/** The root's attribute for the time of a specification. */
export function timeAttribute(spec: TopLevelSpec): string {
  const time = (spec.usermeta as { time?: string } | undefined)?.time;
  return time === undefined ? '' : ` data-time="${fitText(time)}"`;
}
