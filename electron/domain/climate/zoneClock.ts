const secondsPerDay = 86_400

/**
 * The instants (seconds since 1970, UTC) at which a clock showed a time, given in seconds as if the clock stood at UTC: one, none
 * where the clock was put forward over it, two where it was put back, the earlier first.
 */
export type ZoneClock = (shownS: number) => readonly number[]

/**
 * A clock of a zone: UTC, an offset as +01:00, or a name of the time zone database, as Europe/Lisbon. Null: there is no such zone.
 * Checked: tests/domain/climate/zoneClock.spec.ts.
 */
export function zoneClock(zone: string): ZoneClock | null {
  const offset = fixedOffsetS(zone)
  if (offset !== null) return (shownS) => [shownS - offset]
  const offsetAt = offsetReader(zone)
  if (offsetAt === null) return null
  let day = Number.NaN
  let around: readonly number[] = []
  return (shownS) => {
    const shownDay = Math.floor(shownS / secondsPerDay)
    if (shownDay !== day) {
      day = shownDay
      // No zone lies a whole day from UTC, so both sides of the day show every offset in it
      const [before, after] = [offsetAt((day - 1) * secondsPerDay), offsetAt((day + 2) * secondsPerDay)]
      around = before === after ? [before] : [Math.max(before, after), Math.min(before, after)]
    }
    if (around.length === 1) return [shownS - around[0]!]
    return around.map((one) => shownS - one).filter((instant, i) => offsetAt(instant) === around[i])
  }
}

/** Seconds by which a clock of a written offset (Z, UTC, +01:00, -0330) is ahead of UTC; null: it is none. */
export function fixedOffsetS(written: string): number | null {
  if (/^(?:utc|z|gmt)$/i.test(written)) return 0
  const parts = /^(?:UTC)?([+-])(\d\d):?(\d\d)$/.exec(written.replace('\u2212', '-'))
  if (parts === null || Number(parts[2]) > 14 || Number(parts[3]) > 59) return null
  return (parts[1] === '-' ? -1 : 1) * (Number(parts[2]) * 3600 + Number(parts[3]) * 60)
}

function offsetReader(zone: string): ((instantS: number) => number) | null {
  let format: Intl.DateTimeFormat
  try {
    format = new Intl.DateTimeFormat('en-US', {
      ...{ timeZone: zone, hourCycle: 'h23', year: 'numeric', month: 'numeric', day: 'numeric' },
      ...{ hour: 'numeric', minute: 'numeric', second: 'numeric' },
    })
  } catch {
    // The language throws for a zone that it does not know, and that is the answer
    return null
  }
  return (instantS) => {
    const shown: Record<string, number> = {}
    for (const { type, value } of format.formatToParts(instantS * 1000)) shown[type] = Number(value)
    const { year, month, day, hour, minute, second } = shown
    return Date.UTC(year!, month! - 1, day, hour, minute, second) / 1000 - instantS
  }
}
