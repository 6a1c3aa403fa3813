import type { IntervalCase } from '../../../findings/interval/interval-schema.ts';
import { argumentText } from './argument-text.ts';
import type { IntervalWords } from './interval-words.ts';

/** Width of a line of text. */
const WIDTH = 100;

/** The case in plain words, for a terminal: the argument, the candidates and the proposals. */
export function caseText(of: IntervalCase, words: IntervalWords): string {
  const parts = argumentText(of, words).map(({ heading, lead, paragraphs, list }) =>
    [
      heading.toUpperCase(),
      ...(lead === null ? [] : wrap(lead)),
      ...paragraphs.flatMap((text) => wrap(text)),
      ...list.flatMap((text) => wrap(text, '- ', '  ')),
    ].join('\n'),
  );
  return [...parts, candidateLines(of, words), proposalLines(of, words)]
    .filter((part) => part !== '')
    .join('\n\n');
}

function candidateLines(of: IntervalCase, { argument, evidence, format }: IntervalWords): string {
  if (of.candidates.length === 0) return '';
  const heads = evidence.candidateHeads;
  const rows = of.candidates.map((row) => [
    `${argument.interval(row.interval, of.clock)}${row.in_force ? ` (${evidence.inForceMark})` : ''}`,
    row.year ? format.integer(row.year.cleanings.estimate) : evidence.standing[row.standing],
    row.year ? range(row.year.failures) : '',
    row.year ? range(row.year.hours_total) : '',
    row.year?.cost_total ? range(row.year.cost_total) : '',
  ]);
  const table = [[heads.interval, heads.cleanings, heads.failures, heads.hours, heads.cost], ...rows];
  return `${evidence.candidatesCaption.toUpperCase()}\n${columns(table)}`;

  function range(value: { estimate: number; low: number; high: number }): string {
    return argument.withInterval(value.estimate, value.low, value.high);
  }
}

function proposalLines(of: IntervalCase, { argument, plan, format }: IntervalWords): string {
  const { schedule } = of;
  const heading = plan.proposalsCaption(format.month(schedule.month)).toUpperCase();
  if (schedule.not_planned !== null)
    return `${heading}\n${wrap(plan.notPlanned[schedule.not_planned]).join('\n')}`;
  const heads = plan.proposalHeads;
  const rows = schedule.proposals.map((row) => [
    row.unit,
    row.due === null ? plan.state.never_recorded : `${row.due} ${plan.state[row.state]}`.trim(),
    row.out,
    argument.between(row.work.slice(11), row.work_to.slice(11)),
    row.back.slice(11),
    plan.displaced(row.displaced),
  ]);
  const table = [[heads.unit, heads.due, heads.out, heads.work, heads.back, heads.displaced], ...rows];
  return [
    heading,
    ...wrap(plan.basis(argument.interval(schedule.interval!, of.clock), format.date(schedule.earliest))),
    ...wrap(plan.hazard),
    rows.length === 0 ? plan.noneDue : columns(table),
    ...schedule.not_placed.map((row) =>
      plan.notPlacedLine(row.unit, format.date(row.due), plan.notPlaced[row.why]),
    ),
  ].join('\n');
}

/** Rows as columns of text, two blanks between them; empty columns are left out. */
function columns(rows: readonly string[][]): string {
  const used = rows[0]!.flatMap((_, index) =>
    rows.slice(1).some((row) => row[index] !== '') ? [index] : [],
  );
  const widths = used.map((index) => Math.max(...rows.map((row) => row[index]!.length)));
  return rows
    .map((row) =>
      used
        .map((index, at) => row[index]!.padEnd(widths[at]!))
        .join('  ')
        .trimEnd(),
    )
    .join('\n');
}

function wrap(text: string, first = '', rest = ''): string[] {
  const lines: string[] = [];
  let line = first;
  for (const word of text.split(' ')) {
    const next = line === first || line === rest ? `${line}${word}` : `${line} ${word}`;
    if (next.length > WIDTH && line.trim() !== '' && line !== first) {
      lines.push(line);
      line = `${rest}${word}`;
    } else line = next;
  }
  return [...lines, line];
}
