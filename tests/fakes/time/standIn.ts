import { onTestFinished } from 'vitest'

/** Until the test is over, the machine stands in a time zone (IANA name). */
export function standIn(zone: string): void {
  const before = process.env.TZ
  process.env.TZ = zone
  onTestFinished(() => {
    if (before === undefined) delete process.env.TZ
    else process.env.TZ = before
  })
}
