import type { BlindStyle } from '../blind/make-blind.ts';
import { later, lines, wall, wave, write } from '../blind-third/paper.ts';
import { sources } from './indian-truth.ts';

const UNITS = ['AC-01', 'AC-02', 'AC-03'];
const MONTHS = ['', 'Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];
const dayText = (time: Date): string =>
  `${write(time, 'dd')}-${MONTHS[Number(write(time, 'M'))]}-${write(time, 'yyyy')}`;

/** Tables of an Indian pharmaceutical plant with clipped column names, delimited by bars; months as words. */
export function indian(): BlindStyle {
  return {
    name: 'indian',
    zone: 'Asia/Kolkata',
    sources,
    files: {
      'AC_CYC_REG.txt': cycles(),
      'AC_BD_TST.txt': tests(),
      'AC_VLT.txt': leaks(),
      'AC_CLNG.txt': cleaning(),
      'AC_PM_BD.txt': jobs(),
    },
  };
}

/** 45 cycles, one without equipment; two rows stand twice. */
function cycles(): string {
  const kinds = ['WARM UP', 'BD TEST', 'HPHV 121', 'LIQ LOAD 121', 'HPHV 121'];
  const rows: (string | number)[][] = [
    'EQP_ID|CYC_NO|BATCH_NO|CYC_TYPE|CYC_DT|ST_TM|END_TM|CYC_STS|ALM_DESC|HOLD_TM_MIN|HOLD_TEMP_MIN_DEGC|HOLD_TEMP_MAX_DEGC|CHMBR_PR_BARG|DRN_TEMP_DEGC|DONE_BY|CHKD_BY'.split(
      '|',
    ),
  ];
  for (let at = 0; at < 45; at++) {
    const start = wall('2025-06-10', Math.floor(at / 5), 410 + 95 * (at % 5));
    const hot = at % 5 === 1;
    const bad = at === 8 || at === 24;
    rows.push([
      at === 30 ? '' : UNITS[Math.floor(at / 5) % 3]!,
      5561 + at,
      at % 5 > 1 ? `B25${100 + at}` : '',
      at === 42 ? 'PQ RUN' : kinds[at % 5]!,
      dayText(start),
      write(start, 'HH:mm'),
      write(later(start, bad ? 17 : 70 + (at % 6)), 'HH:mm'),
      bad ? 'ABRT' : at === 33 ? 'FAIL' : 'OK',
      at === 8
        ? 'CHAMBER TEMP LOW IN HOLD'
        : at === 24
          ? 'UTILITY STEAM PR LOW'
          : at === 33
            ? 'HOLD TEMP OUT OF BAND'
            : '',
      ...(bad
        ? ['', '', '', '', '']
        : [
            hot ? '3.5' : '30',
            wave(at, hot ? 134.3 : 121.4, 0.2, 1),
            wave(at, hot ? 135.2 : 122.1, 0.3, 1, 3),
            wave(at, hot ? 2.08 : 1.09, 0.03, 2, 5),
            wave(at, hot ? 133.9 : 121.1, 0.3, 1, 9),
          ]),
      ['SK', 'RP', 'AV'][at % 3]!,
      'QA',
    ]);
  }
  return lines([...rows, rows[44]!, rows[45]!], '|');
}

/** 27 tests; one has no result yet. */
function tests(): string {
  const rows: (string | number)[][] = ['EQP_ID|TST_DT|TST_TM|CYC_NO|BD_RSLT|RMK|ENTRY_DT_TM'.split('|')];
  for (let at = 0; at < 27; at++) {
    const time = wall('2025-06-10', Math.floor(at / 3), 530 + 12 * (at % 3));
    rows.push([
      UNITS[at % 3]!,
      dayText(time),
      write(time, 'HH:mm'),
      5562 + at * 5,
      at === 10 ? 'Does not comply' : at === 19 ? 'Test invalid' : at === 25 ? '' : 'Complies',
      at === 10 ? 'Centre portion lighter' : at === 19 ? 'Sheet got wet' : '',
      `${dayText(time)} ${write(later(time, 35 + at), 'HH:mm')}`,
    ]);
  }
  return lines(rows, '|');
}

function leaks(): string {
  const rows: (string | number)[][] = [
    'EQP_ID|VLT_DT|VLT_TM|CYC_NO|PR_INIT_MBAR|PR_FINAL_MBAR|LEAK_RATE_MBAR_PER_MIN|ACC_LIMIT_MBAR_PER_MIN'.split(
      '|',
    ),
  ];
  for (let at = 0; at < 15; at++) {
    const time = wall('2025-05-16', 7 * Math.floor(at / 3), 390 + 25 * (at % 3));
    const rise = 2 + ((at * 3) % 8);
    rows.push([
      UNITS[at % 3]!,
      dayText(time),
      write(time, 'HH:mm'),
      5100 + at * 20,
      61 + (at % 5),
      61 + (at % 5) + rise,
      (rise / 10).toFixed(1),
      '1.3',
    ]);
  }
  return lines(rows, '|');
}

function cleaning(): string {
  const acts = ['DRAIN STRAINER CLNG', 'CHAMBER CLNG', 'DRAIN LINE FLUSHING'];
  const rows: (string | number)[][] = [
    'EQP_ID|ACTIVITY|CLNG_DT|FROM_TM|TO_TM|DURN_MIN|STS|CLNG_TYP|RMK'.split('|'),
  ];
  for (let at = 0; at < 24; at++) {
    const time = wall('2025-06-10', at, 360 + (at % 6));
    const missed = at % 8 === 5;
    rows.push([
      UNITS[at % 3]!,
      at === 18 ? 'DEEP CLNG BY VENDOR' : acts[Math.floor(at / 3) % 3]!,
      dayText(time),
      write(time, 'HH:mm'),
      write(later(time, 15 + (at % 4) * 5), 'HH:mm'),
      15 + (at % 4) * 5,
      missed ? 'NOT DONE' : 'DONE',
      at === 12 ? 'AFTER BD FAILURE' : 'ROUTINE',
      missed ? 'Machine under load' : '',
    ]);
  }
  return lines(rows, '|');
}

const jobs = (): string =>
  [
    'EQP_ID|FROM_DT_TM|TO_DT_TM|JOB_TYP|MAJOR_YN|JOB_DTLS',
    'AC-01|13-Feb-2025 09:30|13-Feb-2025 13:00|PREV MAINT|N|Quarterly PM done',
    'AC-02|13-Feb-2025 14:00|13-Feb-2025 17:10|PREV MAINT|N|Quarterly PM done',
    'AC-03|21-Mar-2025 08:15|22-Mar-2025 18:40|BREAKDOWN REPAIR|Y|Vacuum pump overhauled',
    'AC-01|16-Apr-2025 10:00|18-Apr-2025 12:30|PLC REPLACED|Y|New PLC and recorder',
    'AC-02|02-May-2025 00:00|19-May-2025 08:00|NOT IN USE|N|Area under renovation',
    'AC-02|29-May-2025 11:00|29-May-2025 11:50|BREAKDOWN REPAIR|N|Door gasket changed',
    '',
  ].join('\r\n');
