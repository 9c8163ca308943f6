import { describe, expect, it } from 'vitest'
import { readEvents } from '#domain/signal/events/readEvents.ts'
import { settingsWith } from '#tests/fakes/listenedSession.ts'
import { lines, madeCurve } from '#tests/fakes/madeCurve.ts'

/** Held at 3400 N for 4 s, let down at 5100 N, broken at 6400 N. */
const driven = lines([0, 0], [8, 3400], [12, 3400], [16, 5100], [18, 3000], [26, 6400], [26.01, 200])
const given = { intervalS: 0.0125, endS: 27, breakS: 26, afterBreak: 200, fallS: 0.008, peak: 6400 }

describe('the events of a loading', () => {
  it('are all that there is to see, and the seated part ends with the first of them', () => {
    const { events, course } = readEvents(madeCurve(driven, given), settingsWith({}))
    expect(events.map(({ kind }) => kind).toSorted()).toEqual(['final-drop', 'hold', 'reload'])
    // 425 N/s from 0 s on up to the hold, which is known to a mean of 0.2 s; over all of the hold there is no straight line.
    expect(Math.abs(course.toe!.zeroTimeS)).toBeLessThan(0.02)
    expect(Math.abs(course.toe!.slopeNPerS / 425 - 1)).toBeLessThan(0.01)
  })

  it('tell the seating by the part before the load was first held', () => {
    // The slope grows evenly for 0.9 s, so that the hold begins at 8.45 s and the break comes at 26.45 s.
    const slack = (t: number) => (t < 0.9 ? (425 * t * t) / 1.8 : driven(t - 0.45))
    const { events } = readEvents(madeCurve(slack, { ...given, endS: 27.4, breakS: 26.45 }), settingsWith({}))
    const seating = events.find(({ kind }) => kind === 'seating')!
    // In 40 stretches of 0.211 s the slope at the border after the third is 0.70 of 425 N/s, after the fourth 0.94: from the
    // middle of the fourth, 0.74 s. In 40 stretches of 0.661 s of all of the load it would be from that of the second, 0.99 s.
    expect(Math.abs(seating.endTimeS - 0.74)).toBeLessThan(0.03)
  })
})

describe('a loading with one pause', () => {
  it('has its toe from the part before it', () => {
    const once = lines([0, 0], [8, 3400], [12, 3400], [19.5, 6400], [19.51, 200])
    const { events, course } = readEvents(madeCurve(once, { ...given, endS: 20.5, breakS: 19.5 }), settingsWith({}))
    expect(events.map(({ kind }) => kind).toSorted()).toEqual(['final-drop', 'hold'])
    expect(Math.abs(course.toe!.slopeNPerS / 425 - 1)).toBeLessThan(0.01)
  })
})
