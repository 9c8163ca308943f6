import { scaleUtc } from 'd3-scale'
import type { Axis } from './axis.ts'

const secondsPerDay = 86_400

const forms = {
  year: new Intl.DateTimeFormat('en-GB', { year: 'numeric', timeZone: 'UTC' }),
  month: new Intl.DateTimeFormat('en-GB', { month: 'short', year: 'numeric', timeZone: 'UTC' }),
  day: new Intl.DateTimeFormat('en-GB', { day: 'numeric', month: 'short', timeZone: 'UTC' }),
  hour: new Intl.DateTimeFormat('en-GB', {
    ...{ day: 'numeric', month: 'short', hour: '2-digit', minute: '2-digit', timeZone: 'UTC' },
  }),
} as const

/** An axis of time from one moment to the other exactly (seconds since 1970), with about `count` round ones in UTC on it. */
export function calendarAxis(fromS: number, toS: number, count: number): Axis {
  const room = toS > fromS ? 0 : secondsPerDay
  const [from, to] = [fromS - room, toS + room]
  const named = scaleUtc([new Date(from * 1000), new Date(to * 1000)], [0, 1]).ticks(count)
  const step = named.length > 1 ? (named[1]!.getTime() - named[0]!.getTime()) / 1000 : to - from
  const form =
    step >= 360 * secondsPerDay
      ? forms.year
      : step >= 28 * secondsPerDay
        ? forms.month
        : step >= secondsPerDay
          ? forms.day
          : forms.hour
  return { from, to, ticks: named.map((time) => ({ value: time.getTime() / 1000, label: form.format(time) })) }
}
