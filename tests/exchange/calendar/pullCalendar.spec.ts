import ICAL from 'ical.js'
import { describe, expect, it } from 'vitest'
import { type CalendarPull, pullCalendar } from '#exchange/calendar/pullCalendar.ts'

const pulls: CalendarPull[] = Array.from({ length: 144 }, (_, index) => ({
  uid: `3f9c-1-${Math.floor(index / 12)}-${index % 12}@breakledger`,
  sequence: index % 3,
  dueOn: `20${31 + (index % 12)}-08-31`,
  title: `Pull at ${index % 12} years: which adhesive holds best, in the loft; Ä, 木, "quoted"`,
  description: `12 blocks; casein C1, resorcinol R2\nwithin 14 days \\ before or after`,
  skipped: index === 7,
}))

const eventsIn = (text: string) =>
  new ICAL.Component(ICAL.parse(text)).getAllSubcomponents('vevent').map((one) => new ICAL.Event(one))
const calendarOf = (given: readonly CalendarPull[], writtenAt = '2031-03-01T10:00:00.000Z') =>
  pullCalendar('Study 1', given, writtenAt)

describe('a calendar of 144 pulls, read by ical.js', () => {
  const events = eventsIn(calendarOf(pulls))

  it('holds one all-day event a pull, on its day, with its words', () => {
    expect(events).toHaveLength(144)
    for (const [index, event] of events.entries()) {
      const { uid, sequence, dueOn, title, description, skipped } = pulls[index]!
      expect(event.startDate.isDate).toBe(true)
      expect([event.uid, event.startDate.toString(), event.summary, event.description]).toEqual([
        ...[uid, dueOn, title, description],
      ])
      expect(event.sequence).toBe(sequence)
      expect(event.component.getFirstPropertyValue('status')).toBe(skipped ? 'CANCELLED' : 'CONFIRMED')
    }
  })

  it("takes nobody's time", () => {
    expect(events.every(({ component }) => component.getFirstPropertyValue('transp') === 'TRANSPARENT')).toBe(true)
  })
})

it('has no line of more than 75 octets, and ends every line as RFC 5545 asks', () => {
  const lines = calendarOf(pulls).split('\r\n')
  expect(lines.every((line) => Buffer.byteLength(line) <= 75 && !line.includes('\n'))).toBe(true)
})

it('is the same at another time but for DTSTAMP', () => {
  const withoutStamp = (text: string) => text.replace(/^DTSTAMP:.*$/gm, '')
  const [first, second] = [calendarOf(pulls), calendarOf(pulls, '2044-01-01T00:00:00.000Z')]
  expect(first).not.toBe(second)
  expect(withoutStamp(first)).toBe(withoutStamp(second))
})

it('names the same day in every time zone', () => {
  const zone = process.env.TZ
  try {
    for (const elsewhere of ['Pacific/Kiritimati', 'Pacific/Pago_Pago']) {
      process.env.TZ = elsewhere
      expect(eventsIn(calendarOf(pulls))[0]!.startDate.toString()).toBe('2031-08-31')
    }
  } finally {
    if (zone === undefined) delete process.env.TZ
    else process.env.TZ = zone
  }
})

it('takes no line of the file from a title, and no character that the standard allows in no text', () => {
  const title = 'Bilge\r\nEND:VCALENDAR\r\nBEGIN:VEVENT\0\u0007'
  const text = pullCalendar(title, [{ ...pulls[0]!, title, description: title }], '2031-03-01T10:00:00.000Z')
  expect(text.match(/^(?:END:VCALENDAR|BEGIN:VEVENT)$/gm)).toHaveLength(2)
  // RFC 5545, 3.1: CONTROL
  expect(text.replaceAll('\r\n', '')).not.toMatch(/\p{Cc}/u)
  expect(eventsIn(text)[0]!.summary).toContain('Bilge END:VCALENDAR')
})
