import ical, { ICalCalendarMethod, ICalEventStatus, ICalEventTransparency } from 'ical-generator'

/** One pull as an entry of a calendar. */
export type CalendarPull = {
  /** Stays the same whatever is decided about the pull, and is no other's anywhere. */
  uid: string
  /** Rises whenever the pull is changed. */
  sequence: number
  dueOn: string
  title: string
  description: string
  skipped: boolean
}

/**
 * Pulls as a calendar file (RFC 5545): one all-day event each, which takes nobody's time. Given the same pulls, two files differ in
 * DTSTAMP alone, the instant at which each was written.
 */
export function pullCalendar(name: string, pulls: readonly CalendarPull[], writtenAt: string): string {
  const calendar = ical({
    name: oneLine(name),
    prodId: { company: 'Breakledger', product: 'Pulls', language: 'EN' },
    method: ICalCalendarMethod.PUBLISH,
  })
  for (const { uid, sequence, dueOn, title, description, skipped } of pulls)
    calendar.createEvent({
      id: uid,
      sequence,
      stamp: new Date(writtenAt),
      // The day itself, wherever the machine stands
      start: new Date(`${dueOn}T00:00:00Z`),
      timezone: 'UTC',
      allDay: true,
      summary: oneLine(title),
      description: printable(description),
      transparency: ICalEventTransparency.TRANSPARENT,
      status: skipped ? ICalEventStatus.CANCELLED : ICalEventStatus.CONFIRMED,
    })
  return calendar.toString()
}

/** Without what RFC 5545, 3.1, allows in no text: control characters, of which a line end would begin a line of the file itself. */
function printable(text: string): string {
  return text.replaceAll(/\r\n?/g, '\n').replaceAll(/(?!\n)\p{Cc}/gu, ' ')
}

function oneLine(text: string): string {
  return printable(text).replaceAll('\n', ' ')
}
