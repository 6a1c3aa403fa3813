import type {
  AbortClass,
  CleaningReason,
  CleaningState,
  CleaningTask,
  CycleKind,
  CycleOutcome,
  ServiceKind,
  TestResult,
} from '../../pipeline/site/vocabulary.ts';

/** What happened, before any export: instants in ms, measures in seconds, degrees Celsius and kPa absolute. */

export interface Phases {
  evacuation?: number;
  heatUp?: number;
  exposure?: number;
  exhaust?: number;
  drying?: number;
  temperatureMin?: number;
  temperatureMax?: number;
  pressure?: number;
  dryVacuum?: number;
  drainTemperature?: number;
}

/** What was built in on purpose; never exported. */
export type Tag = 'purge' | 'unexplained_stop' | 'utility_day' | 'long_heat_up' | 'repeated_hour';

export interface Cycle extends Phases {
  unit: string;
  number: number;
  kind: CycleKind;
  program: string;
  start: number;
  end: number;
  outcome: CycleOutcome;
  abort?: { class: AbortClass; text: string };
  tag?: Tag;
}

export interface Test {
  unit: string;
  time: number;
  result: TestResult;
  cycle: number;
  note: string;
  entered: number;
  role: 'day' | 'retest' | 'after_repair' | 'qualification';
}

export interface Leak {
  unit: string;
  time: number;
  rate: number;
  cycle: number;
}

export interface Cleaning {
  unit: string;
  task: CleaningTask;
  /** End of the work, or when it was due. */
  time: number;
  start?: number;
  minutes?: number;
  state: CleaningState;
  reason?: CleaningReason;
  note: string;
  entered: number;
  dateOnly?: boolean;
  support?: 'supported' | 'running' | 'hot';
}

export interface Service {
  unit: string;
  from: number;
  to?: number;
  kind: ServiceKind;
  major: boolean;
  note: string;
}

/** The state of one operating day of one unit, as the generator knows it. */
export interface DayTruth {
  day: number;
  use: boolean;
  overdue: boolean | undefined;
  strainer: 'done' | 'late' | 'missed' | undefined;
  result: TestResult | 'missing' | undefined;
  production: number;
  cleanlinessAborts: number;
  unrelatedAborts: number;
  late: boolean;
}

export interface UnitHistory {
  unit: string;
  cycles: Cycle[];
  tests: Test[];
  leaks: Leak[];
  cleanings: Cleaning[];
  service: Service[];
  days: DayTruth[];
}
