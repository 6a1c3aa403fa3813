import { html } from '../../html/html.ts';
import { numbering, type ReportContext } from '../../page-context.ts';
import { page, type Section } from '../../parts/page.ts';
import { withInterval } from '../../rows/ahead-rows.ts';
import { actionsSection, standingCounts, stepsSection } from './actions.ts';
import { changesSection } from './changes.ts';
import { missingSection, nextMonthSection, watchSection } from './next-month.ts';

/** For the meeting: what changed, what was done of what was decided, what to decide, what comes next. */
export async function meetingPage(context: ReportContext): Promise<string> {
  const { words, month, review } = context;
  const numbers = numbering();
  return page(context, {
    title: words.changes.title(month),
    heading: words.changes.page,
    under: html`<p class="organisation">${month}${review.organisation !== '' && `, ${review.organisation}`}</p>`,
    path: 'meeting.html',
    sections: [
      changesSection(context, numbers),
      actionsSection(context, numbers),
      stepsSection(context, numbers),
      await nextMonthSection(context, numbers),
      watchSection(context, numbers),
      missingSection(context, numbers),
    ],
  });
}

/** The same in a few sentences, for the review's first page. */
export function meetingInShort({ words, review }: ReportContext): Section {
  const { changes: moved, next_month: ahead, actions } = review;
  const { meeting, changes, format } = words;
  const tasks = withInterval(ahead);
  const of = (change: string) => moved.attention.filter((row) => row.change === change).length;
  const outstanding = tasks.filter((task) => task.state === 'outstanding').length;
  const missing = meeting.shortMissing(ahead.missing.length);
  return {
    id: 'meeting',
    heading: meeting.shortHeading,
    body: html`<ul class="plain">
<li>${
      moved.previous.state === 'read'
        ? changes.short(moved.verdicts.length, moved.drift.length, of('new'), of('gone'))
        : changes.state[moved.previous.state](moved.previous)
    } <a class="screen" href="meeting.html#changes">${changes.heading}</a></li>
${actions.kept && html`<li>${meeting.shortActions(standingCounts(review))} <a class="screen" href="meeting.html#actions">${meeting.actionsHeading}</a></li>`}
<li>${meeting.shortNext(format.month(ahead.month), tasks.length - outstanding, outstanding)} <a class="screen" href="meeting.html#next-month">${meeting.nextHeading(format.month(ahead.month))}</a></li>
${missing !== '' && html`<li>${missing} <a class="screen" href="meeting.html#missing">${meeting.missingHeading}</a></li>`}
</ul>`,
  };
}
