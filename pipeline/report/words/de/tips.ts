import type { TipWords } from '../en/tips.ts';
import { format } from './format.ts';

const { count, integer } = format;

interface Per100 {
  per_100: number | null;
  low?: number | null;
  high?: number | null;
}

const per100 = (value: number): string => format.fixed(value, value < 9.95 ? 1 : 0);
const rate = ({ per_100, low, high }: Per100): string =>
  per_100 === null
    ? ''
    : `; ${per100(per_100)} je 100${typeof low !== 'number' || typeof high !== 'number' ? '' : ` (Intervall ${per100(low)} bis ${per100(high)})`}`;
const of = (events: number, all: number): string => `${integer(events)} von ${integer(all)}`;
const clockTime = (hour: number): string => `${String(hour).padStart(2, '0')}:00`;

/** Was eine Marke eines Bildes von sich sagt, wenn man auf sie zeigt oder sie liest. */
export const tips: TipWords = {
  of: (name, text) => `${name}, ${text}`,
  month: (month, point) =>
    point.of === 0
      ? `${format.month(month)}: nichts zu zählen`
      : `${format.month(month)}: ${of(point.events, point.of)}${rate(point)}${
          point.lower === null || point.upper === null
            ? ''
            : `; Grenzen ${per100(point.lower)} bis ${per100(point.upper)}`
        }${point.signal === '' ? '' : `; Signal: ${point.signal}`}`,
  day: (date, what) => `${format.date(date)}: ${what}`,
  spell: (from, to, what) => `${format.span(from, to)}: ${what}`,
  state: (task, state) => `${task}: ${state}`,
  due: (task, n, state, due) => `${task}: ${of(n, due)} ${state}`,
  clockClass: (label, events, all, value) => `${label} Tage: ${of(events, all)}${rate(value)}`,
  side: (label, events, all, value) => `${label}: ${of(events, all)}${rate(value)}`,
  comparison: (exposed, unexposed, ratio, verdict) =>
    `${exposed} mit, ${unexposed} ohne; Verhältnis ${ratio}; ${verdict}`,
  histogram: (label, days, result) => `${label} Tage: ${count(days, 'Prüftag', 'Prüftage')} ${result}`,
  ranking: (counts, value, shrunken, low, high) =>
    `${counts}${value === null ? '' : `, ${per100(value)} je 100 wie gezählt`}; ${per100(shrunken)} (${per100(low)} bis ${per100(high)}), zu allen Geräten hin gezogen`,
  contradicted: 'eingetragene Kammerreinigung, der das Chargenprotokoll widerspricht',
  times: (name, n) => `${name}, ${integer(n)}-mal`,
  intervalClass: (clock, label, events, all, value, fitted) =>
    `${clock} ${label}: ${of(events, all)}${rate(value)}${fitted === null ? '' : `; die Anpassung erwartet ${format.twoFigures(fitted)}`}`,
  year: {
    hours: (interval, hours, low, high) =>
      `${interval}: ${integer(hours)} Stunden außer Betrieb im Jahr (Intervall ${integer(low)} bis ${integer(high)})`,
    cost: (interval, cost, low, high) =>
      `${interval}: ein Jahr kostet ${integer(cost)} (Intervall ${integer(low)} bis ${integer(high)})`,
  },
  appearance: (label, inspections, score) =>
    `Tage ${label}: ${count(inspections, 'Sichtprüfung', 'Sichtprüfungen')} mit Aussehen ${score}`,
  hour: (weekday, hour, share) =>
    `${format.weekday(weekday)}, ${clockTime(hour)} bis ${clockTime(hour + 1)}: in ${format.percent(share)} der Wochen lief eine Charge`,
  value: (value, measure) => `${value} ${measure}`.trim(),
};
