/** Gründe der Methoden, nach dem Satz, mit dem sie selbst sagen, warum es kein Ergebnis gibt. */
const REASONS: Record<string, string> = {
  'There is no fit.': 'Es gibt keine Anpassung.',
  'Fewer than three classes of the clock have five expected failures.':
    'In weniger als drei Klassen der Uhr sind fünf Fehler zu erwarten.',
  'There are fewer than two events.': 'Es gibt weniger als zwei Ereignisse.',
  'All observation covers the same stretch of the clock.':
    'Alle Beobachtung deckt dieselbe Strecke der Uhr ab.',
  'The likelihood has no maximum: all events stand at one end of the clock.':
    'Die Likelihood hat kein Maximum: Alle Ereignisse stehen an einem Ende der Uhr.',
  'No stratum has pairs that differ in both.':
    'In keiner Schicht gibt es Paare, die sich in beidem unterscheiden.',
  'Events, non-events and groups with different scores are all needed.':
    'Es braucht Ereignisse, ihr Ausbleiben und Gruppen mit verschiedenen Stufen.',
  'The information without covariates is singular.': 'Ohne Merkmale ist die Information singulär.',
  'There are no events.': 'Es gibt keine Ereignisse.',
  'There must be at least one event and one non-event.':
    'Es braucht mindestens ein Ereignis und ein Ausbleiben.',
  'No stratum has both cases and non-cases.': 'In keiner Schicht stehen Fälle und Nichtfälle zugleich.',
  'The search for the maximum of the likelihood did not converge.':
    'Die Suche nach dem Maximum der Likelihood kam zu keinem Ende.',
};

/** Der Grund auf Deutsch; ein unbekannter wird zum allgemeinen, da review.json den genauen Satz hat. */
export const reasonText = (sentence: string): string =>
  sentence === ''
    ? ''
    : (REASONS[sentence] ??
      'Aus diesen Aufzeichnungen nicht berechenbar; den genauen Grund nennt review.json.');

const METHODS: Record<string, string> = {
  'conditional logistic regression, exact likelihood': 'Bedingte logistische Regression, exakte Likelihood',
  'logistic regression, unconditional maximum likelihood':
    'Logistische Regression, unbedingte Maximum-Likelihood',
  'conditional Poisson regression with offset, maximum likelihood':
    'bedingte Poisson-Regression mit Offset, Maximum-Likelihood',
};

/** Name einer Methode. */
export const methodText = (name: string): string => METHODS[name] ?? name;
