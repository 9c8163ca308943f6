import { describe, expect, it } from 'vitest'
import { forceNear, marksOf } from '#renderer/pages/break/curveMarks.ts'
import { madeEvent } from '#tests/fakes/madeEvents.ts'
import { createScriptedHost } from '#tests/fakes/scriptedHost.ts'

const timeS = Float64Array.of(0, 1, 2, 3)
const force = Float64Array.of(0, 10, 20, 5)

describe('forceNear', () => {
  it('takes the sample nearest in time, also beyond the ends', () => {
    expect([-1, 0.4, 0.6, 2.9, 9].map((at) => forceNear(timeS, force, at))).toEqual([0, 0, 10, 5, 5])
  })
})

describe('marksOf', () => {
  it('marks peak, start, break and events, each with words and a shape', () => {
    const host = createScriptedHost()
    host.addBreak(
      20,
      {},
      {
        peakTimeS: 2,
        onsetTimeS: 0.9,
        breakTimeS: 3,
        events: [madeEvent({ kind: 'pop-in', startTimeS: 1, endTimeS: 1.1, dropN: 2, dropPercent: 20 })],
      },
    )
    const result = host.breaks[0]!.evaluations[0]!.result
    expect(marksOf(result, timeS, force, (peakN) => `${peakN} N`)).toEqual([
      { timeS: 2, value: 20, label: 'peak 20 N', shape: 'peak' },
      { timeS: 0.9, value: 10, label: 'loading starts', shape: 'onset' },
      { timeS: 3, value: 5, label: 'break', shape: 'break' },
      { timeS: 1, value: 10, label: 'pop-in', shape: 'event' },
    ])
  })
})
