import type { RecordKind } from '../site/vocabulary.ts';

/**
 * Which words of the vocabulary speak of which field, by kind of record. The first concept of a field is its own; the others are more general and count
 * a little less.
 */
export const FIELD_CONCEPTS: Record<RecordKind, Readonly<Record<string, readonly string[]>>> = {
  cycles: {
    unit: ['unit'],
    start: ['start', 'date_time', 'date', 'time_of_day', 'from'],
    kind: ['kind'],
    outcome: ['outcome'],
    end: ['end', 'to'],
    cycle_number: ['cycle_number'],
    abort_text: ['abort_text', 'note'],
    evacuation_s: ['evacuation_s'],
    heat_up_s: ['heat_up_s'],
    exposure_s: ['exposure_s'],
    exhaust_s: ['exhaust_s'],
    drying_s: ['drying_s'],
    exposure_temperature_min_c: ['exposure_temperature_min_c'],
    exposure_temperature_max_c: ['exposure_temperature_max_c'],
    exposure_pressure_kpa: ['exposure_pressure_kpa'],
    dry_vacuum_kpa: ['dry_vacuum_kpa'],
    drain_temperature_c: ['drain_temperature_c'],
  },
  air_removal_tests: {
    unit: ['unit'],
    time: ['date_time', 'date', 'start', 'time_of_day', 'from'],
    result: ['result', 'outcome'],
    cycle_number: ['cycle_number'],
    note: ['note'],
    entered_at: ['entered_at'],
  },
  leak_tests: {
    unit: ['unit'],
    time: ['date_time', 'date', 'start', 'time_of_day', 'from'],
    leak_rate_kpa_min: ['leak_rate_kpa_min'],
    limit_kpa_min: ['limit_kpa_min'],
    cycle_number: ['cycle_number'],
  },
  cleanings: {
    unit: ['unit'],
    task: ['task', 'work'],
    time: ['cleaned_at', 'date_time', 'date', 'end', 'time_of_day', 'to'],
    start: ['begun', 'start', 'from'],
    minutes: ['minutes'],
    state: ['state'],
    reason: ['reason'],
    note: ['note'],
    entered_at: ['entered_at'],
  },
  service: {
    unit: ['unit'],
    from: ['from', 'start', 'date_time', 'date'],
    kind: ['service_kind'],
    to: ['to', 'end'],
    major: ['major'],
    note: ['note', 'work'],
  },
  inspections: {
    unit: ['unit'],
    time: ['date_time', 'date', 'time_of_day'],
    appearance: ['appearance'],
    residue_after_rinsing: ['residue_after_rinsing'],
    note: ['note'],
  },
  water: {
    point: ['point'],
    time: ['date_time', 'date', 'time_of_day'],
    determinand: ['determinand'],
    value: ['value'],
    measure: ['measure'],
    units: ['served'],
  },
  actions: {
    time: ['decided_at', 'date', 'date_time'],
    action: ['action'],
    unit: ['unit'],
    role: ['role'],
    due: ['due'],
    done_on: ['done_on'],
    state: ['action_state', 'state'],
  },
};

/** Lists of words in the vocabulary for the fields that hold a word. */
export const wordList = (kind: RecordKind, field: string): string | undefined =>
  field === 'kind'
    ? kind === 'service'
      ? 'service_kind'
      : 'kind'
    : field === 'major' || field === 'residue_after_rinsing'
      ? 'yes_no'
      : kind === 'actions' && field === 'state'
        ? 'action_state'
        : ['outcome', 'result', 'task', 'state', 'reason'].includes(field)
          ? field
          : undefined;
