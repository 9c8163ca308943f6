import { expect, it } from 'vitest'
import type { ForceCurve } from '#contract/breaks/curve.ts'
import { createCurveStretches } from '#renderer/plots/recorded/curveStretches.ts'
import type { Span } from '#renderer/plots/zoom.ts'

const curveOf = (...timeS: number[]): ForceCurve => ({
  timeS: Float64Array.from(timeS),
  force: Float64Array.from(timeS),
  unit: 'N',
  samples: timeS.length,
})

/** Questions that are answered when the test says so. */
function open(firstIsWhole = true) {
  const answers: ((answer: ForceCurve | null) => Promise<void>)[] = []
  const arrivals: (Span | null)[] = []
  const stretches = createCurveStretches({
    load: () =>
      new Promise((resolve) => {
        answers.push(async (answer) => {
          resolve(answer)
          await Promise.resolve()
          await Promise.resolve()
        })
      }),
    maxPoints: () => 400,
    accepts: (answer) => answer !== null,
    firstIsWhole,
    onArrival: (wanted) => arrivals.push(wanted),
  })
  return { stretches, answers, arrivals }
}

const part = { fromS: 1, toS: 2 }

it('shows the answer to the question that was asked last, whichever comes first', async () => {
  const { stretches, answers, arrivals } = open()
  stretches.fetch(null)
  stretches.fetch(part)
  await answers[1]!(curveOf(1, 2))
  await answers[0]!(curveOf(0, 1, 2, 3))
  expect(stretches.shown()?.samples).toBe(2)
  expect(arrivals).toEqual([part])
})

it('goes back to the whole curve without asking, and takes nothing that comes later', async () => {
  const { stretches, answers } = open()
  stretches.fetch(null)
  await answers[0]!(curveOf(0, 1, 2, 3))
  stretches.fetch(part)
  stretches.showWhole()
  await answers[1]!(curveOf(1, 2))
  expect(stretches.shown()?.samples).toBe(4)
})

it('keeps what is shown when an answer is not accepted', async () => {
  const { stretches, answers, arrivals } = open()
  stretches.fetch(null)
  await answers[0]!(curveOf(0, 1, 2))
  stretches.fetch(part)
  await answers[1]!(null)
  expect(stretches.shown()?.samples).toBe(3)
  expect(arrivals).toEqual([null])
})

it.each([
  [true, 2],
  [false, undefined],
])('takes a first stretch for the whole only where that is wanted (%s)', async (firstIsWhole, samples) => {
  const { stretches, answers } = open(firstIsWhole)
  stretches.fetch(part)
  await answers[0]!(curveOf(1, 2))
  expect(stretches.whole()?.samples).toBe(samples)
})

it('tells of nothing after its end', async () => {
  const { stretches, answers, arrivals } = open()
  stretches.fetch(null)
  stretches.end()
  await answers[0]!(curveOf(0, 1))
  expect(arrivals).toEqual([])
  expect(stretches.shown()).toBeNull()
})
