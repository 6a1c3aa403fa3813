import type { Draft } from './draft.ts';

const MINUTE = 60_000;
const HOUR = 60 * MINUTE;

/** Cycles so near to a repeated wall time are its neighbours. */
const NEIGHBOURS_WITHIN = 36 * HOUR;
/** Cycles that overlap by no more than this still follow each other: stamps are rounded. */
const SLACK = 5 * MINUTE;
/** Cycle numbers further apart than this don't belong to one run: the counter rolled over or was set back. */
const RUN_GAP = 50;

/** More cycles than this around one repeated hour are no log of a unit; they are left undecided. */
const MOST_NEIGHBOURS = 500;

/** One way to read the times of a cycle. */
interface Option {
  start: number;
  end: number | undefined;
}

/** One cycle: all rows of the same unit, cycle number and written times. */
interface Node {
  drafts: Draft[];
  cycleNumber: number | undefined;
  options: Option[];
}

/**
 * Decides between the two readings of wall times that occur twice (clocks back) in the cycles of a unit, as far as its other cycles decide: a unit runs one cycle at a
 * time, and cycles follow each other in the order of their numbers. Numbers are used in runs, so that a counter that rolls over or is set back doesn't mislead;
 * a run that contradicts the unrepeated times is not used at all. What stays undecided keeps the earlier reading and the mark "ambiguous".
 *
 * Changes `start`, `end` and `time_mark` of the drafts' records.
 */
export function resolveRepeatedHour(drafts: readonly Draft[]): void {
  if (!drafts.some(({ choices }) => choices)) return;
  for (const cluster of clusters(drafts)) resolve(nodesOf(cluster));
}

/** For each clock change, the cycles with repeated times and their neighbours. */
function clusters(drafts: readonly Draft[]): Draft[][] {
  const startOf = (draft: Draft): number => draft.record.start as number;
  const repeated = drafts
    .filter(({ choices }) => choices)
    .map(startOf)
    .sort((a, b) => a - b);
  const spans: { from: number; until: number }[] = [];
  for (const start of repeated) {
    const last = spans.at(-1);
    if (last && start - NEIGHBOURS_WITHIN <= last.until) last.until = start + NEIGHBOURS_WITHIN;
    else spans.push({ from: start - NEIGHBOURS_WITHIN, until: start + NEIGHBOURS_WITHIN });
  }
  return spans.map(({ from, until }) =>
    drafts.filter((draft) => startOf(draft) >= from && startOf(draft) <= until),
  );
}

function nodesOf(drafts: readonly Draft[]): Node[] {
  const nodes = new Map<string, Node>();
  const sorted = [...drafts].sort(
    (a, b) => Number(b.record.end !== undefined) - Number(a.record.end !== undefined),
  );
  for (const draft of sorted) {
    const cycleNumber = draft.record.cycle_number as number | undefined;
    const starts = draft.choices?.starts ?? [draft.record.start as number];
    const key = [cycleNumber, starts[0], cycleNumber === undefined ? draft.record.end : ''].join();
    const node = nodes.get(key);
    if (node) node.drafts.push(draft);
    else nodes.set(key, { drafts: [draft], cycleNumber, options: optionsOf(draft) });
  }
  return [...nodes.values()];
}

function optionsOf({ record, choices }: Draft): Option[] {
  const own = { start: record.start as number, end: record.end as number | undefined };
  if (!choices) return [own];
  const ends = record.end === undefined ? [undefined] : choices.ends;
  const options = choices.starts.flatMap((start) => ends.map((end): Option => ({ start, end })));
  const fitting = options.filter(
    ({ start, end }) => end === undefined || (start <= end && end - start <= 24 * HOUR),
  );
  return fitting.length > 0 ? fitting : [own];
}

function resolve(nodes: readonly Node[]): void {
  if (nodes.length <= MOST_NEIGHBOURS) {
    const runs = runsOf(nodes);
    for (let before = -1, count = countOf(nodes); count !== before; before = count, count = countOf(nodes)) {
      for (const [at, node] of nodes.entries())
        for (const other of nodes.slice(at + 1)) agree(node, other, standApart);
      for (const run of runs)
        for (const [at, node] of run.slice(1).entries()) agree(run[at]!, node, followEachOther);
    }
  }
  for (const node of nodes) for (const draft of node.drafts) if (draft.choices) settle(draft, node.options);
}

const countOf = (nodes: readonly Node[]): number =>
  nodes.reduce((sum, { options }) => sum + options.length, 0);

/**
 * Takes out the options of two cycles that fit none of the other's. The last option is never taken out: if none fits, the times contradict each other and
 * decide nothing.
 */
function agree(a: Node, b: Node, fit: (a: Option, b: Option) => boolean): void {
  if (a.options.length === 1 && b.options.length === 1) return;
  const ofA = a.options.filter((option) => b.options.some((other) => fit(option, other)));
  if (ofA.length === 0) return;
  b.options = b.options.filter((option) => a.options.some((other) => fit(other, option)));
  a.options = ofA;
}

/** A unit runs one cycle at a time. Rows that give the same start may be the same cycle. */
function standApart(a: Option, b: Option): boolean {
  return a.start === b.start || Math.min(finish(a), finish(b)) - Math.max(a.start, b.start) <= SLACK;
}

/** The cycle with the next number starts later, and after this one has ended. */
function followEachOther(a: Option, b: Option): boolean {
  return b.start > a.start && b.start >= finish(a) - SLACK;
}

const finish = ({ start, end }: Option): number => end ?? start;

/** Nodes with numbers, in order of their numbers, cut where the counter jumps; runs that contradict the known times are left out. */
function runsOf(nodes: readonly Node[]): Node[][] {
  const numbered = nodes
    .filter((node): node is Node & { cycleNumber: number } => node.cycleNumber !== undefined)
    .sort((a, b) => a.cycleNumber - b.cycleNumber || a.options[0]!.start - b.options[0]!.start);
  const runs: (typeof numbered)[] = [];
  for (const node of numbered) {
    const last = runs.at(-1)?.at(-1);
    if (last?.cycleNumber === node.cycleNumber) continue;
    if (last && node.cycleNumber - last.cycleNumber <= RUN_GAP) runs.at(-1)!.push(node);
    else runs.push([node]);
  }
  return runs.filter((run) => {
    const known = run.filter(({ options }) => options.length === 1).map(({ options }) => options[0]!.start);
    return known.every((start, index) => index === 0 || start >= known[index - 1]!);
  });
}

/** Puts what is left of the options into the record: the earlier reading where both are. */
function settle(draft: Draft, options: readonly Option[]): void {
  const { record } = draft;
  const choices = draft.choices!;
  const starts = [...new Set(options.map(({ start }) => start))].sort((a, b) => a - b);
  const start = starts[0]!;
  record.start = start;
  if (choices.starts.length > 1) record.time_mark = starts.length > 1 ? 'ambiguous' : 'time';
  if (record.end === undefined) return;
  const ends = options.filter((option) => option.start === start && choices.ends.includes(option.end!));
  const end =
    ends.length > 0 ? ends.map(finish).sort((a, b) => a - b)[0] : choices.ends.find((at) => at >= start);
  if (end !== undefined) record.end = end;
}
