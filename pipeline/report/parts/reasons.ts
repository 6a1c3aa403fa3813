import type { AttentionReason } from '../../findings/review-schema.ts';
import { type Html, html } from '../html/html.ts';
import type { ReportContext } from '../page-context.ts';

/** Section of the unit's page that holds the evidence of a reason. */
const EVIDENCE: Record<AttentionReason['code'], string> = {
  ran_after_failure: 'records',
  ran_after_failure_perhaps: 'records',
  episode_open: 'tests',
  failed_test: 'tests',
  test_missing: 'records',
  test_late: 'records',
  return_incomplete: 'records',
  requalification_incomplete: 'records',
  comparison_shown: 'comparisons',
  chamber_overdue_now: 'cleaning',
  task_outstanding: 'cleaning',
  records_contradicted: 'records',
  leak_over_limit: 'tests',
  leak_near_limit: 'tests',
  drift_near_limit: 'drift',
  drift_moving: 'drift',
  drift_stepped: 'drift',
  heat_up_out_of_range: 'drift',
  abort_rate_signal: 'cycles',
  early_stops: 'records',
  strainers_missed: 'cleaning',
};

/** The address of the evidence of a reason, on the page of its unit; a unit with a reason always has one. */
export function evidenceLink(
  { unitPage }: Pick<ReportContext, 'unitPage'>,
  unit: string,
  reason: AttentionReason,
): string {
  return `${unitPage(unit)!}#${EVIDENCE[reason.code]}`;
}

/** Why a unit needs attention: evidence in numbers, what to do next, who decides, and the way to the evidence. */
export function reasonList(
  { words, level: intervalLevel, unitPage }: ReportContext,
  unit: { unit: string; attention: readonly AttentionReason[] },
  evidence: 'linked' | 'here',
): Html {
  const { attention } = words;
  const item = (reason: AttentionReason): Html => {
    const text = attention.reason[reason.code](reason.numbers, intervalLevel);
    const anchor = `#${EVIDENCE[reason.code]}`;
    const href = evidence === 'here' ? anchor : `${unitPage(unit.unit)!}${anchor}`;
    return html`<li>
<p>${text.evidence} <a class="screen" href="${href}">${attention.evidence}<span class="hidden">, ${words.pages.unit(unit.unit)}: ${text.evidence}</span></a></p>
<p class="next"><b>${attention.next}:</b> ${text.next} <b>${attention.decides}:</b> ${text.decides}.</p>
</li>
`;
  };
  return html`${LEVELS.map((level) => {
    const reasons = unit.attention.filter((reason) => reason.level === level);
    if (reasons.length === 0) return false;
    return html`<div class="reasons ${level}">
<p class="level">${attention.level[level]}</p>
<ul>
${reasons.map(item)}</ul>
</div>
`;
  })}`;
}

const LEVELS = ['act', 'decide', 'look'] as const;
