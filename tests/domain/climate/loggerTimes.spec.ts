import { describe, expect, it } from 'vitest'
import { loggerTimes } from '#domain/climate/loggerTimes.ts'
import { zoneClock } from '#domain/climate/zoneClock.ts'

const minutes = (...times: number[]) => Float64Array.from(times, (time) => time * 60)
const unsaid = (count: number) => new Float64Array(count).fill(Number.NaN)
const utc = zoneClock('UTC')!
const read = (times: Float64Array, clock = utc, nowS = 1e12) => loggerTimes(times, unsaid(times.length), clock, nowS)
const faults = (found: ReturnType<typeof read>) => Object.fromEntries(found.faults)

describe('the times of a logger', () => {
  it('rise, and a row that goes back or repeats one is left out', () => {
    const found = read(minutes(0, 10, 20, 5, 15, 20, 30))
    expect(faults(found)).toEqual({
      3: { fault: 'back', other: 2 },
      4: { fault: 'back', other: 2 },
      5: { fault: 'shown-before', other: 2 },
    })
    expect([...found.timeS]).toEqual([0, 600, 1200, Number.NaN, Number.NaN, Number.NaN, 1800])
  })

  it('leaves out one that lies ahead of all that follow', () => {
    expect(faults(read(minutes(0, 10, 9000, 20, 30)))).toEqual({ 2: { fault: 'ahead', other: 3 } })
  })

  it('takes a file from its end where the newest stands first', () => {
    const found = read(minutes(30, 20, 10, 0))
    expect(found.newestFirst).toBe(true)
    expect([...found.timeS]).toEqual([1800, 1200, 600, 0])
  })

  it('takes the hour that a clock shows twice in order, and refuses the one that it leaves out', () => {
    // Lisbon: back from 2:00 to 1:00 on 25 October 2026, forward from 1:00 to 2:00 on 29 March 2026 (EU Directive 2000/84/EC: at 1:00 UTC).
    const lisbon = zoneClock('Europe/Lisbon')!
    const at = (text: string) => Date.parse(`${text}:00Z`) / 1000
    const shown = ['2026-10-25T00:30', '2026-10-25T01:00', '2026-10-25T01:30', '2026-10-25T01:00', '2026-10-25T01:30']
    const autumn = read(Float64Array.from([...shown, '2026-10-25T02:00'], at), lisbon)
    expect([...autumn.timeS].map((time) => new Date(time * 1000).toISOString().slice(11, 16))).toEqual([
      '23:30',
      '00:00',
      '00:30',
      '01:00',
      '01:30',
      '02:00',
    ])
    const spring = read(Float64Array.from(['2026-03-29T00:59', '2026-03-29T01:30', '2026-03-29T02:00'], at), lisbon)
    expect(faults(spring)).toEqual({ 1: { fault: 'none-shown', other: null } })
  })

  it('goes by the offset of a row where it has one', () => {
    const found = loggerTimes(minutes(60, 70), Float64Array.of(3600, Number.NaN), utc, 1e12)
    expect([...found.timeS]).toEqual([0, 4200])
  })

  it('knows that what has not come cannot have been read', () => {
    expect(faults(read(minutes(0, 10), utc, 300))).toEqual({ 1: { fault: 'to-come', other: null } })
  })

  it('has nothing to say of no row', () => {
    expect(read(new Float64Array(0))).toMatchObject({ newestFirst: false, timeS: new Float64Array(0) })
  })
})
