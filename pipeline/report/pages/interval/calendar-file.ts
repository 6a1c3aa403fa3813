import { createHash } from 'node:crypto';
import ical, { ICalEventTransparency } from 'ical-generator';
import type { IntervalCase } from '../../../findings/interval/interval-schema.ts';
import type { Proposal } from '../../../findings/interval/schedule-schema.ts';
import type { IntervalWords } from './interval-words.ts';

/**
 * The proposals as an iCalendar file (RFC 5545). Times are written in UTC, so that no time zone has to be described. The stamp is that of the newest record and each UID is a
 * digest of what the event is about, so that the same records give the same bytes and a second import replaces the first.
 *
 * @param organisation name from the site file, may be empty
 */
export function calendarFile(
  of: IntervalCase,
  organisation: string,
  { plan, format, lang }: IntervalWords,
): string {
  const { schedule } = of;
  const calendar = ical({
    name: plan.calendarName(organisation, format.month(schedule.month)),
    prodId: { company: 'cleaning-evidence', product: 'proposed cleanings', language: lang.toUpperCase() },
  });
  const stamp = new Date(schedule.newest_event_at ?? Date.parse(`${schedule.from}T00:00:00Z`));
  for (const proposal of schedule.proposals) {
    calendar.createEvent({
      id: uidOf(organisation, proposal),
      stamp,
      start: new Date(proposal.out_at),
      end: new Date(proposal.back_at),
      summary: plan.eventTitle(proposal.unit),
      location: proposal.site,
      transparency: ICalEventTransparency.OPAQUE,
      description: plan.eventText({
        due: proposal.due === null ? null : format.date(proposal.due),
        work: proposal.work.slice(11),
        workTo: proposal.work_to.slice(11),
        displaced: plan.displaced(proposal.displaced),
      }),
    });
  }
  return calendar.toString().replace(/\r?\n/g, '\r\n').trimEnd().concat('\r\n');
}

/** Unit and time of the work make an event; the domain is one that can never be registered (RFC 2606). */
function uidOf(organisation: string, { site, unit, work_at }: Proposal): string {
  const digest = createHash('sha256')
    .update([organisation, site, unit, String(work_at)].join('\u0000'))
    .digest('hex')
    .slice(0, 32);
  return `${digest}@cleaning-evidence.invalid`;
}
