import ICAL from 'ical.js';
import { describe, expect, it } from 'vitest';
import type { IntervalCase } from '../../../../pipeline/findings/interval/interval-schema.ts';
import { calendarFile } from '../../../../pipeline/report/pages/interval/calendar-file.ts';
import { intervalWords } from '../../../../pipeline/report/pages/interval/interval-words.ts';
import { caseOf, risingUnits } from '../../../findings/interval/fleet.ts';

const { found } = caseOf(risingUnits(4, 300));
const text = calendarFile(found, 'Sterile, supply; \u201cNorth\u201d', intervalWords);
/** Read by another library (ical.js), which knows nothing of the one that wrote it. */
const events = (file: string) => {
  const calendar = new ICAL.Component(ICAL.parse(file));
  return calendar.getAllSubcomponents('vevent').map((event) => new ICAL.Event(event));
};

describe('calendar file', () => {
  it('is read back by another library, event by event', () => {
    const read = events(text);
    expect(read.length).toBe(found.schedule.proposals.length);
    expect(read.length).toBeGreaterThan(2);
    for (const [index, event] of read.entries()) {
      const proposal = found.schedule.proposals[index]!;
      expect(event.startDate.toJSDate().getTime()).toBe(proposal.out_at);
      expect(event.endDate.toJSDate().getTime()).toBe(proposal.back_at);
      expect(event.summary).toBe(`Proposed chamber cleaning, unit ${proposal.unit}`);
      expect(event.description).toContain('let the chamber cool; isolate steam, power, air and water');
      expect(event.description).toContain('instructions for use of the unit and of the cleaner rule');
      expect(event.description).toContain('pass the air-removal test before any load');
      expect(event.startDate.zone).toBe(ICAL.Timezone.utcTimezone);
    }
  });

  it('keeps what RFC 5545 asks: version, product, a stamp and a UID of its own in each event, lines of at most 75 octets that end in CRLF', () => {
    const calendar = new ICAL.Component(ICAL.parse(text));
    expect(calendar.getFirstPropertyValue('version')).toBe('2.0');
    expect(calendar.getFirstPropertyValue('prodid')).toMatch(/^-\/\//);
    const uids = events(text).map((event) => event.uid);
    expect(new Set(uids).size).toBe(uids.length);
    for (const event of calendar.getAllSubcomponents('vevent'))
      expect(event.getFirstProperty('dtstamp')).toBeTruthy();
    expect(text.endsWith('END:VCALENDAR\r\n')).toBe(true);
    expect(text.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/);
    for (const line of text.split('\r\n')) expect(Buffer.byteLength(line)).toBeLessThanOrEqual(75);
  });

  it('comes out the same twice, stamped by the newest record', () => {
    expect(calendarFile(found, 'Sterile, supply; \u201cNorth\u201d', intervalWords)).toBe(text);
    const stamp = new ICAL.Component(ICAL.parse(text))
      .getFirstSubcomponent('vevent')!
      .getFirstPropertyValue('dtstamp');
    expect((stamp as ICAL.Time).toJSDate().getTime()).toBe(
      Math.floor(found.schedule.newest_event_at! / 1000) * 1000,
    );
    // Another organisation has other events.
    expect(events(calendarFile(found, 'Other', intervalWords))[0]!.uid).not.toBe(events(text)[0]!.uid);
  });

  it('escapes what a name may hold', () => {
    const odd = structuredClone(found) as IntervalCase;
    odd.schedule.proposals[0]!.unit = 'A,1;\\ B\nEND:VEVENT';
    const read = events(calendarFile(odd, '', intervalWords));
    expect(read.length).toBe(found.schedule.proposals.length);
    expect(read[0]!.summary).toBe('Proposed chamber cleaning, unit A,1;\\ B\nEND:VEVENT');
  });

  it('without proposals is an empty calendar', () => {
    const none = { ...found, schedule: { ...found.schedule, proposals: [], newest_event_at: null } };
    expect(events(calendarFile(none, '', intervalWords))).toEqual([]);
  });
});
