import type { BlindStyle } from '../blind/make-blind.ts';
import { clock, later, lines, wall, wave, write } from '../blind-third/paper.ts';
import { sources } from './american-truth.ts';

const UNITS = ['STER 1', 'STER 2', 'STER 3'];

/** Printouts of an American department saved as CSV: a header on each page, 12-hour clock, Fahrenheit, psig. */
export function american(): BlindStyle {
  return {
    name: 'american',
    zone: 'America/Chicago',
    sources,
    files: {
      'SterilizerCycleSummary_Q2.csv': cycles(),
      'BowieDick_log.csv': tests(),
      'LeakTest_log.csv': leaks(),
      'biomed_workorders.csv': workOrders(),
    },
  };
}

/** 40 cycles, one of them on 31 April; one row printed twice where the page ends; two more headers and a total. */
function cycles(): string {
  const header =
    'Cycle Date,Start,Stop,Sterilizer ID,Cycle Count,Load No.,Cycle Selected,Result,Alarm / Cancel Reason,Evac (mm:ss),Come-Up (mm:ss),Exposure (mm:ss),Exhaust (mm:ss),Dry Time (min),Exp. Temp Low (F),Exp. Temp High (F),Chamber Press. (psig),Incubator Slot';
  const kinds = ['WARM-UP', 'BOWIE-DICK TEST', 'PREVAC 270F 4 MIN', 'GRAVITY 250F 30 MIN', 'LIQUID 250F'];
  const rows: (string | number)[][] = [];
  for (let at = 0; at < 40; at++) {
    const start = wall('2025-04-14', Math.floor(at / 5), 365 + 88 * (at % 5));
    const kind = at === 27 ? 'ENGINEERING QUAL RUN' : kinds[at % 5]!;
    const slow = kind.includes('250F');
    const stopped = at === 12 || at === 33;
    const open = at === 39;
    rows.push([
      at === 17 ? '04/31/2025' : write(start, 'MM/dd/yyyy'),
      write(start, 'h:mm a'),
      open ? '' : write(later(start, stopped ? 6 : 45 + (at % 7)), 'h:mm a'),
      UNITS[Math.floor(at / 5) % 3]!,
      18210 + at,
      `L${1 + (at % 5)}`,
      kind,
      open ? 'IN PROCESS' : stopped ? 'ABORTED' : 'COMPLETE',
      at === 12 ? 'TOO LONG IN EVACUATION' : at === 33 ? 'OPERATOR CANCEL' : '',
      ...(stopped || open
        ? Array(8).fill('')
        : [
            clock(Number(wave(at, 380, 20, 0))),
            clock(Number(wave(at, 130, 9, 0, 5))),
            clock((slow ? 1800 : at % 5 === 1 ? 210 : 240) + (at % 3)),
            clock(Number(wave(at, 75, 8, 0, 3))),
            slow ? 5 : at % 5 < 2 ? 1 : 20,
            wave(at, slow ? 250.6 : 270.9, 0.3, 1),
            wave(at, slow ? 252 : 272.4, 0.4, 1, 3),
            wave(at, slow ? 15.4 : 27.8, 0.3, 1, 5),
          ]),
      at % 5 === 2 ? 1 + (at % 4) : '',
    ]);
  }
  const table = lines(rows, ',').split('\r\n').slice(0, -1);
  const pages = [
    ...table.slice(0, 14),
    '',
    header,
    table[13]!,
    ...table.slice(14, 28),
    '',
    header,
    ...table.slice(28),
  ];
  return [
    'CENTRAL STERILE - STERILIZER CYCLE SUMMARY',
    'Printed:,04/23/2025 3:05 PM',
    'Sort order:,cycle date / start',
    '',
    header,
    ...pages,
    `TOTAL CYCLES,40${','.repeat(16)}`,
    '',
  ].join('\r\n');
}

function tests(): string {
  const rows: string[][] = [
    ['Test Date', 'Time Read', 'Sterilizer ID', 'Test Pack Lot', 'Pass/Fail', 'Tech', 'Comments'],
  ];
  for (let at = 0; at < 30; at++)
    rows.push([
      write(wall('2025-04-14', Math.floor(at / 3)), 'MM/dd/yyyy'),
      write(wall('2025-04-14', 0, 420 + 11 * (at % 3) + (at % 4)), 'h:mm a'),
      UNITS[at % 3]!,
      `A${71 + Math.floor(at / 12)}-2`,
      at === 7 ? 'FAIL' : at === 16 ? 'VOID' : 'PASS',
      ['RJ', 'MT', 'KL'][at % 3]!,
      at === 7 ? 'Light spot, center of sheet' : at === 16 ? 'pack run with a load, repeated' : '',
    ]);
  return lines(rows, ',');
}

function leaks(): string {
  const rows: (string | number)[][] = [
    [
      'Date',
      'Time',
      'Sterilizer ID',
      'Cycle Count',
      'Leak Rate (mmHg/min)',
      'Max Allowed (mmHg/min)',
      'Acceptable?',
    ],
  ];
  for (let at = 0; at < 18; at++)
    rows.push([
      write(wall('2025-03-05', 7 * Math.floor(at / 3)), 'MM/dd/yyyy'),
      write(wall('2025-03-05', 0, 345 + 20 * (at % 3)), 'h:mm a'),
      UNITS[at % 3]!,
      17900 + at * 9,
      wave(at, 0.5, 0.2, 2),
      '1.00',
      'Y',
    ]);
  return lines(rows, ',');
}

const workOrders = (): string =>
  [
    'WO Number,Asset,Opened,Completed,Work Type,Major Repair (Y/N),Labor Hrs,Work Performed',
    'WO-4410,STER 1,01/14/2025 8:10 AM,01/14/2025 11:45 AM,Preventive Maintenance,N,3.5,Semi-annual PM',
    'WO-4431,STER 3,01/28/2025 1:20 PM,01/28/2025 2:50 PM,Repair,N,1.5,Door gasket replaced',
    'WO-4459,STER 2,02/17/2025 7:00 AM,02/19/2025 4:15 PM,Repair,Y,14,"Vacuum pump replaced, piping rerouted"',
    'WO-4470,STER 2,03/03/2025 9:00 AM,03/03/2025 2:00 PM,Contractor Chamber Cleaning,N,5,Outside vendor',
    'WO-4488,STER 1,03/18/2025 8:00 AM,03/20/2025 5:30 PM,Controller Replacement,Y,18,New control board and screen',
    'WO-4502,STER 3,04/02/2025 6:00 AM,04/07/2025 6:00 AM,Out of Service,N,0,Steam line work in the building',
    'WO-4517,STER 3,04/15/2025 10:30 AM,04/15/2025 11:40 AM,Preventive Maintenance,N,1,Quarterly check',
    '',
  ].join('\r\n');
