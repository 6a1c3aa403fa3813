/** Names of the inputs of the case. */
const NAMES: Record<string, string> = {
  cool_down_hours: 'Cool-down',
  work_minutes: 'Work at the chamber',
  warm_up_minutes: 'Warm-up',
  test_minutes: 'Air-removal test',
  people: 'People at work',
  sprayer_litres: 'Filling of the sprayer',
  fillings: 'Fillings',
  cleaner_ml_per_litre: 'Dose of the cleaner',
  hours_out_of_use: 'Time out of use after a failed test',
  retests: 'Further tests after a failed test',
  delayed_loads: 'Loads delayed by a failed test',
  hours_per_abort: 'Time lost by an abort',
  labour_hour: 'Price of an hour of labour',
  hour_out_of_use: 'Price of an hour out of use',
  cleaner_litre: 'Price of a litre of cleaner',
  other_per_cleaning: 'Other material of a cleaning',
  retest: 'Price of a further test',
  repair_per_failure: 'Repair that a failed test brings',
  delayed_load: 'Price of a delayed load',
  abort: 'Price of an abort',
  failure_rate: 'Rate of failed tests',
  failure_shape: 'Shape of the failures',
};

export const intervalInputWords = {
  name: (code: string): string => NAMES[code] ?? code,
  /** The same inside a sentence. */
  inText: (code: string): string => (NAMES[code] ?? code).toLowerCase(),
  /** From and to of an input that was changed. A rate has no unit that anyone knows: its factors stand for it. */
  changed: (code: string, low: string, high: string): [string, string] =>
    code === 'failure_rate' ? ['half', 'twice'] : [low, high],
  units: { h: 'h', min: 'min', number: '', l: 'l', 'ml/l': 'ml/l', cost: '' } as Record<string, string>,
  origin: {
    site: 'site file',
    record: 'from the record',
    default: 'default',
    not_given: 'not given, not counted',
  },
  heads: { name: 'Input', value: 'In force', origin: 'Where from', records: 'Values in the record' },
  caption: 'Inputs of the case',
  dose: (ml: string, litres: string) =>
    `A cleaning takes ${ml} ml of cleaner in ${litres} l of water. Half a US fluid ounce a US gallon (5.86 ml in 1.5 l) is common practice; the label of the cleaner rules.`,
  hours: (hours: string) =>
    `Together a cleaning keeps a unit out of use for ${hours} hours: cool-down, work, warm-up, air-removal test.`,
};
export type IntervalInputWords = typeof intervalInputWords;
