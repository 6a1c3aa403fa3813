import type { BlindStyle } from '../blind/make-blind.ts';
import { counter, names, number, probe, rare, text, time, words } from './probe.ts';

/** Tables with columns that mean nearly what another one means: planned beside actual, set beside measured, printed beside done. */
export const againstCertainty = (): BlindStyle[] => [
  probe('traps in english', 'Europe/London', [
    {
      file: 'sterilizer cycles.csv',
      kind: 'cycles',
      columns: [
        time('Printed at', undefined, 'dd/MM/yyyy HH:mm', 400),
        names('Sterilizer', 'unit', ['S1', 'S2']),
        time('Scheduled start', undefined, 'dd/MM/yyyy HH:mm', -10),
        time('Actual start', 'start', 'dd/MM/yyyy HH:mm'),
        time('Actual end', 'end', 'dd/MM/yyyy HH:mm', 45),
        counter('Cycle no', 'cycle_number', 800),
        words('Cycle', 'kind', {
          Porous: 'production',
          'Warm up': 'warm_up',
          'Bowie Dick': 'air_removal_test',
        }),
        number('Set temperature', undefined, 134, 0),
        number('Jacket temp max', undefined, 136, 0.3, 1),
        number('Chamber temp min', 'exposure_temperature_min_c', 134.3, 0.2, 1, 'C'),
        number('Chamber temp max', 'exposure_temperature_max_c', 135.2, 0.2, 1, 'C'),
        number('Steam supply pressure (bar)', undefined, 3.9, 0.1, 1),
        rare('Cycle result', 'outcome', { Pass: 'completed', Fail: 'failed' }),
        names('Release status', undefined, ['Released', 'Held']),
      ],
    },
    {
      file: 'maintenance planner.csv',
      kind: 'service',
      step: 20_003,
      columns: [
        names('Sterilizer', 'unit', ['S1', 'S2']),
        time('Planned start', undefined, 'dd/MM/yyyy', -1441),
        time('Planned finish', undefined, 'dd/MM/yyyy', -1000),
        time('Actual start', 'from', 'dd/MM/yyyy'),
        time('Actual finish', 'to', 'dd/MM/yyyy', 1441),
        words('Type', 'kind', { Service: 'maintenance', Repair: 'repair' }),
        text('Notes', 'note', ['gasket']),
      ],
    },
  ]),
  probe('Fallen', 'Europe/Berlin', [
    {
      file: 'Chargen.csv',
      kind: 'cycles',
      delimiter: ';',
      decimal: ',',
      columns: [
        names('Sterilisator', 'unit', ['A', 'B']),
        counter('Beladungsnummer', undefined, 40),
        counter('Chargennummer', 'cycle_number', 900),
        time('Freigabezeit', undefined, 'dd.MM.yyyy HH:mm', 90),
        time('Startzeit', 'start', 'dd.MM.yyyy HH:mm'),
        time('Endzeit', 'end', 'dd.MM.yyyy HH:mm', 60),
        words('Programm', 'kind', {
          Instrumente: 'production',
          'Bowie-Dick': 'air_removal_test',
          Abfall: 'other',
        }),
        number('Solltemperatur', undefined, 134, 0),
        number('Temperatur Kammer min.', 'exposure_temperature_min_c', 134.2, 0.2, 1, 'C'),
        number('Temperatur Mantel max.', undefined, 136, 0.2, 1),
        number('Sterilisierzeit Soll (s)', undefined, 300, 0),
        number('Sterilisierzeit Ist (s)', 'exposure_s', 304, 2, 0, 's'),
        rare('Status', 'outcome', { beendet: 'completed', abgebrochen: 'aborted' }),
      ].map((one) =>
        one.header === 'Sterilisator' ? names('Sterilisator', 'unit', ['Steri A', 'Steri B']) : one,
      ),
    },
    {
      file: 'Reinigung.csv',
      kind: 'cleanings',
      delimiter: ';',
      step: 1441,
      columns: [
        names('Sterilisator', 'unit', ['Steri A', 'Steri B']),
        words('Tätigkeit', 'task', { Sieb: 'drain_strainer', Kammer: 'chamber' }),
        time('Fällig', undefined, 'dd.MM.yyyy', -1441),
        time('Erledigt', 'time', 'dd.MM.yyyy'),
        time('Geprüft am', undefined, 'dd.MM.yyyy', 2000),
        time('Nächste Reinigung', undefined, 'dd.MM.yyyy', 10_000),
      ],
    },
  ]),
  probe('pièges', 'Europe/Paris', [
    {
      file: 'entretien.csv',
      kind: 'service',
      delimiter: ';',
      step: 20_003,
      columns: [
        names('Stérilisateur', 'unit', ['St A', 'St B']),
        time("Date prévue d'intervention", undefined, 'dd/MM/yyyy', -3000),
        time('Début intervention', 'from', 'dd/MM/yyyy HH:mm'),
        time('Fin intervention', 'to', 'dd/MM/yyyy HH:mm', 300),
        time('Prochaine visite', undefined, 'dd/MM/yyyy', 100_000),
        words('Type', 'kind', { Préventif: 'maintenance', Dépannage: 'repair' }),
      ],
    },
    {
      file: 'tests BD.csv',
      kind: 'air_removal_tests',
      delimiter: ';',
      step: 1440,
      columns: [
        time('Saisi le', 'entered_at', 'dd/MM/yyyy HH:mm', 300),
        time('Date test', 'time', 'dd/MM/yyyy'),
        time('Heure test', 'time', 'HH:mm'),
        names('Stérilisateur', 'unit', ['St A', 'St B']),
        rare('Résultat', 'result', { Conforme: 'pass', 'Non conforme': 'fail' }),
        time('Validé le', undefined, 'dd/MM/yyyy HH:mm', 500),
      ],
    },
  ]),
  probe('trampas', 'America/Mexico_City', [
    {
      file: 'limpieza.csv',
      kind: 'cleanings',
      step: 1441,
      columns: [
        names('Esterilizador', 'unit', ['E1', 'E2']),
        words('Actividad', 'task', { Rejilla: 'drain_strainer', Cámara: 'chamber', Enjuague: 'drain_flush' }),
        time('Fecha programada', undefined, 'dd/MM/yyyy', -1441),
        time('Hora programada', undefined, 'HH:mm', 17),
        time('Fecha real', 'time', 'dd/MM/yyyy'),
        time('Hora real', 'time', 'HH:mm'),
        rare('Estatus', 'state', { Realizado: 'done', Omitido: 'missed' }),
        text('Observaciones', 'note', ['sarro']),
      ],
    },
  ]),
];
