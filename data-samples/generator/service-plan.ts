import { at, dayNumber } from './clock.ts';
import type { Service } from './history.ts';
import { type UnitPlan, ZONES } from './scenario.ts';

/** A planned stay out of use: whole operating days, and what follows the return. */
export interface Stay {
  from: number;
  to: number;
  kind: Service['kind'];
  major: boolean;
  note: string;
  /** Passing air-removal tests on the last day of the stay, of the three that follow a major repair. */
  passes: number;
}

// biome-ignore format: one stay a line
const STAYS: Record<string, readonly (Omit<Stay, 'from' | 'to'> & { from: string; to: string })[]> = {
  Q1: [professional('2025-09-21'), { from: '2026-01-19', to: '2026-01-19', kind: 'repair', major: false, note: 'Door gasket replaced', passes: 0 }],
  Q2: [professional('2025-10-05')],
  Q3: [professional('2025-08-17'), { from: '2026-05-11', to: '2026-05-13', kind: 'repair', major: true, note: 'Vacuum pump replaced', passes: 2 }],
  Q4: [professional('2025-11-09')],
  Q5: [professional('2025-07-13')],
  Q6: [professional('2025-10-18')],
  T1: [professional('2025-09-14'), { from: '2026-02-09', to: '2026-02-12', kind: 'repair', major: true, note: 'Soudure de la cuve, tuyauterie remplacée', passes: 3 }],
  T2: [{ from: '2025-09-22', to: '2025-09-23', kind: 'controller_replaced', major: true, note: 'Nouvelle commande – main-d’œuvre externe, compteur remis à 1', passes: 3 }, professional('2026-02-15')],
  T3: [professional('2025-11-15')],
  T4: [professional('2025-08-31')],
};

function professional(day: string) {
  return { from: day, to: day, kind: 'professional_cleaning' as const, major: false, note: '', passes: 0 };
}

export const staysOf = (plan: UnitPlan): Stay[] =>
  (STAYS[plan.id] ?? []).map((stay) => ({ ...stay, from: dayNumber(stay.from), to: dayNumber(stay.to) }));

/** Service records of a stay; a major repair has a record of its out-of-service days beside its own. */
export function serviceRecords(plan: UnitPlan, stay: Stay): Service[] {
  const zone = ZONES[plan.site];
  const whole = { unit: plan.id, from: at(zone, stay.from, 480), to: at(zone, stay.to, 900) };
  const own: Service = { ...whole, kind: stay.kind, major: stay.major, note: stay.note };
  if (!stay.major) return [own];
  return [own, { ...whole, from: at(zone, stay.from, 420), kind: 'out_of_service', major: false, note: '' }];
}
