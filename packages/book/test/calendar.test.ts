import fc from 'fast-check';
import ICAL from 'ical.js';
import { describe, expect, it } from 'vitest';
import { calendarText, type DueDate, dueDates } from '../src/index.ts';

describe('what falls due', () => {
  const inspection = { kind: 'inspection', part: 'shelter', what: 'look', why: [] };

  it('takes every duty with a day, and brings inspections back', () => {
    const dates = dueDates(
      [
        {
          kind: 'renewal',
          part: 'cover-roof',
          what: 'renew the film',
          why: ['lasts ', { value: 3.6e3, kind: 'time' }],
          day: '2026-10-01',
        },
        { kind: 'renewal', part: 'cover-sides', what: 'renew the mesh', why: [] },
        { ...inspection, day: '2027-01-10' },
      ],
      '2026-11-25',
      'metric',
    );
    expect(dates.map(({ id, day, everyMonths }) => [id, day, everyMonths])).toEqual([
      ['renewal-cover-roof', '2026-10-01', undefined],
      ['inspect', '2027-01-10', 3],
      ['inspect-year', '2027-11-25', 12],
    ]);
    expect(dates[0]?.what).toBe('Renew the film');
  });

  it('asks for an overdue inspection today, and in three months where nothing is written down', () => {
    const first = (duties: Parameters<typeof dueDates>[0]) =>
      dueDates(duties, '2026-11-25', 'metric').find((one) => one.id === 'inspect')?.day;
    expect(first([{ ...inspection, day: '2025-01-01' }])).toBe('2026-11-25');
    expect(first([inspection])).toBe('2027-02-25');
  });
});

describe('the calendar file', () => {
  const dates: readonly DueDate[] = [
    {
      id: 'renew-cover-roof',
      day: '2030-09-01',
      what: 'Renew the film; commas, semicolons\nand a line of its own',
      why: 'lasts about 4 yr, on since 2026-09-01. '.repeat(6).trim(),
    },
    { id: 'inspect', day: '2027-02-25', what: 'Look', why: 'every three months', everyMonths: 3 },
  ];

  it('is opened by an independent reader with every day, text and repetition', () => {
    const calendar = new ICAL.Component(ICAL.parse(calendarText('bed-arch', dates, '2026-11-25')));
    const events = calendar.getAllSubcomponents('vevent').map((one) => new ICAL.Event(one));
    expect(events.map((one) => [one.uid, one.startDate.isDate, one.startDate.toString()])).toEqual([
      ['renew-cover-roof.bed-arch@tautline', true, '2030-09-01'],
      ['inspect.bed-arch@tautline', true, '2027-02-25'],
    ]);
    expect(events[0]?.summary).toBe(`${dates[0]?.what} (bed-arch)`);
    expect(events[0]?.description).toBe(dates[0]?.why);
    expect(events[1]?.isRecurring()).toBe(true);
    const repeat = events[1]!.iterator();
    expect([0, 1, 2].map(() => repeat.next().toString())).toEqual(['2027-02-25', '2027-05-25', '2027-08-25']);
  });

  it('keeps to RFC 5545: lines of at most 75 octets, ended by CR LF, times in UTC from the given day', () => {
    const text = calendarText('bed-arch', dates, '2026-11-25');
    for (const line of text.split('\r\n')) {
      expect(new TextEncoder().encode(line).length).toBeLessThanOrEqual(75);
      expect(line).not.toMatch(/[\r\n]/);
    }
    expect(text.match(/DTSTAMP:.*/g)).toEqual(['DTSTAMP:20261125T000000Z', 'DTSTAMP:20261125T000000Z']);
  });

  it('brings any text back as it was', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme-ascii', minLength: 1 }), (why) => {
        const text = calendarText('house', [{ id: 'x', day: '2027-01-01', what: 'x', why }], '2026-01-01');
        const event = new ICAL.Component(ICAL.parse(text)).getFirstSubcomponent('vevent');
        expect(event?.getFirstPropertyValue('description') ?? '').toBe(why);
      }),
      { numRuns: 100 },
    );
  });
});
