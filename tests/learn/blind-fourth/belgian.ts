import type { BlindStyle } from '../blind/make-blind.ts';
import { later, wall, wave, write } from '../blind-third/paper.ts';
import { sources } from './belgian-truth.ts';

const STAMP = 'yyyy-MM-dd HH:mm:ss';
const UNITS = ['STE_A', 'STE_B', 'STE_C'];
const stamp = (time: Date): string => write(time, STAMP);

type Value = string | number | null;
/** Texts in quotes, numbers bare, NULL for what is empty. */
const dump = (header: string, rows: readonly (readonly Value[])[]): string =>
  [
    header,
    ...rows.map((row) =>
      row
        .map((value) => (value === null ? 'NULL' : typeof value === 'number' ? value : `"${value}"`))
        .join(','),
    ),
    '',
  ].join('\n');

/** Tables of a database of a Belgian plant for infusions, dumped month by month: names in snake case, NULL, codes in capitals. */
export function belgian(): BlindStyle {
  const header =
    'id_cycle,code_sterilisateur,num_cycle,type_prog,dh_debut,dh_fin,etat,msg_alarme,duree_vide_s,duree_montee_s,duree_palier_s,duree_echappement_s,duree_sechage_s,temp_palier_min_c,temp_palier_max_c,press_palier_kpa_abs,vide_sechage_kpa_abs,code_lot';
  const all = cycles();
  return {
    name: 'belgian',
    zone: 'Europe/Brussels',
    sources,
    files: {
      't_cycles_202503.csv': dump(header, all.slice(0, 27)),
      't_cycles_202504.csv': dump(header, all.slice(24)),
      't_tests_bd.csv': tests(),
      't_tests_fuite.csv': leaks(),
      't_nettoyages.csv': cleaning(),
    },
  };
}

/** 54 cycles, three of which stand in both months; one has a start in the 13th month. */
function cycles(): Value[][] {
  const programs = [
    'PRECHAUFFAGE',
    'BOWIE_DICK',
    'LIQUIDES_121',
    'SOLIDES_134',
    'LIQUIDES_121',
    'TEST_FUITE',
  ];
  return Array.from({ length: 54 }, (_, at): Value[] => {
    const start = later(wall('2025-03-27', Math.floor(at / 6), 340 + 95 * (at % 6)), (at % 9) / 6);
    const program = at === 39 ? 'VALIDATION' : programs[at % 6]!;
    const hot = program === 'BOWIE_DICK' || program === 'SOLIDES_134';
    const bad = at === 14 || at === 45;
    const open = at === 53;
    const number = (value: string): number => Number(value);
    return [
      77001 + at,
      UNITS[Math.floor(at / 6) % 3]!,
      3310 + at,
      program,
      at === 20 ? '2025-13-30 09:00:00' : stamp(start),
      open ? null : stamp(later(start, bad ? 11 : 75 + (at % 7))),
      open ? 'EN_COURS' : bad ? 'INTERROMPU' : at === 32 ? 'NON_CONFORME' : 'TERMINE',
      at === 14
        ? 'VIDANGE BOUCHEE'
        : at === 45
          ? 'MANQUE VAPEUR RESEAU'
          : at === 32
            ? 'TEMPERATURE BASSE'
            : null,
      ...(bad || open || program === 'TEST_FUITE'
        ? Array<null>(9).fill(null)
        : [
            number(wave(at, 260, 12, 0)),
            number(wave(at, 410, 22, 0, 3)),
            hot ? 240 : 1200,
            number(wave(at, 330, 18, 0, 5)),
            hot ? 600 : null,
            number(wave(at, hot ? 134.4 : 121.3, 0.2, 1)),
            number(wave(at, hot ? 135.3 : 122, 0.3, 1, 3)),
            number(wave(at, hot ? 312.5 : 210.4, 2, 1, 5)),
            hot ? number(wave(at, 5.8, 0.6, 1, 9)) : null,
          ]),
      at % 6 > 1 && at % 6 < 5 ? `LOT${400 + at}` : null,
    ];
  });
}

const tests = (): string =>
  dump(
    'id_test,code_sterilisateur,dh_test,num_cycle,resultat_ok,remarque,dh_saisie',
    Array.from({ length: 27 }, (_, at) => {
      const time = wall('2025-03-27', Math.floor(at / 3), 470 + 8 * (at % 3));
      const remark = at === 15 ? 'centre plus clair' : null;
      const typed = stamp(later(time, 14 + (at % 8)));
      return [500 + at, UNITS[at % 3]!, stamp(time), 3311 + at * 6, at === 15 ? 0 : 1, remark, typed];
    }),
  );

/** 18 tests; of one there is no rate. */
const leaks = (): string =>
  dump(
    'id_test,code_sterilisateur,dh_test,num_cycle,taux_fuite_mbar_min,limite_mbar_min,conforme',
    Array.from({ length: 18 }, (_, at) => [
      800 + at,
      UNITS[at % 3]!,
      stamp(wall('2025-02-17', 7 * Math.floor(at / 3), 900 + 30 * (at % 3))),
      3100 + at * 12,
      at === 11 ? null : Number(wave(at, 0.7, 0.3, 2)),
      1.3,
      'O',
    ]),
  );

function cleaning(): string {
  const types = ['CREPINE', 'CHAMBRE', 'RINCAGE_VIDANGE'];
  return dump(
    'id_nett,code_sterilisateur,type_nettoyage,dh_debut,dh_fin,duree_min,statut,origine,commentaire,operateur',
    Array.from({ length: 30 }, (_, at) => {
      const start = wall('2025-03-20', at, 310 + (at % 9));
      const length = 20 + 5 * (at % 4);
      const state = at % 10 === 6 ? 'NON_FAIT' : at === 22 ? 'SANS_OBJET' : 'FAIT';
      return [
        1200 + at,
        UNITS[at % 3]!,
        at === 13 ? 'PRESTATAIRE_ANNUEL' : types[Math.floor(at / 3) % 3]!,
        stamp(start),
        stamp(later(start, length)),
        state === 'FAIT' ? length : null,
        state,
        at === 9 ? 'SUITE_ECHEC_TEST' : 'PLANIFIE',
        state === 'NON_FAIT' ? 'appareil occupé' : null,
        `op${1 + (at % 4)}`,
      ];
    }),
  );
}
