import type { IntervalInputWords } from '../en/interval-inputs.ts';

/** Namen der Eingaben. */
const NAMES: Record<string, string> = {
  cool_down_hours: 'Abkühlen',
  work_minutes: 'Arbeit an der Kammer',
  warm_up_minutes: 'Aufheizen',
  test_minutes: 'Bowie-Dick-Test',
  people: 'Personen bei der Arbeit',
  sprayer_litres: 'Füllung des Sprühgeräts',
  fillings: 'Füllungen',
  cleaner_ml_per_litre: 'Dosis des Reinigungsmittels',
  hours_out_of_use: 'Zeit außer Betrieb nach einem nicht bestandenen Test',
  retests: 'Weitere Tests nach einem nicht bestandenen',
  delayed_loads: 'Durch einen nicht bestandenen Test verzögerte Chargen',
  hours_per_abort: 'Zeitverlust durch einen Abbruch',
  labour_hour: 'Preis einer Arbeitsstunde',
  hour_out_of_use: 'Preis einer Stunde außer Betrieb',
  cleaner_litre: 'Preis eines Liters Reinigungsmittel',
  other_per_cleaning: 'Weiteres Material einer Reinigung',
  retest: 'Preis eines weiteren Tests',
  repair_per_failure: 'Reparatur, die ein nicht bestandener Test nach sich zieht',
  delayed_load: 'Preis einer verzögerten Charge',
  abort: 'Preis eines Abbruchs',
  failure_rate: 'Rate nicht bestandener Tests',
  failure_shape: 'Form der Fehler',
};

export const intervalInputWords: IntervalInputWords = {
  name: (code) => NAMES[code] ?? code,
  inText: (code) => NAMES[code] ?? code,
  changed: (code, low, high) => (code === 'failure_rate' ? ['halb', 'doppelt'] : [low, high]),
  units: { h: 'h', min: 'min', number: '', l: 'l', 'ml/l': 'ml/l', cost: '' },
  origin: {
    site: 'Standortdatei',
    record: 'aus den Aufzeichnungen',
    default: 'Vorgabe',
    not_given: 'nicht angegeben, nicht gezählt',
  },
  heads: { name: 'Eingabe', value: 'Gilt', origin: 'Woher', records: 'Werte in den Aufzeichnungen' },
  caption: 'Eingaben der Rechnung',
  dose: (ml, litres) =>
    `Eine Reinigung braucht ${ml} ml Reinigungsmittel in ${litres} l Wasser. Eine halbe US-Flüssigunze je US-Gallone (5,86 ml in 1,5 l) ist verbreitete Praxis; es gilt das Etikett des Mittels.`,
  hours: (hours) =>
    `Zusammen hält eine Reinigung ein Gerät ${hours} Stunden außer Betrieb: Abkühlen, Arbeit, Aufheizen, Bowie-Dick-Test.`,
};
