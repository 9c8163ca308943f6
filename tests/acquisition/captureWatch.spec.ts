import { expect, it } from 'vitest'
import { createCaptureWatch } from '#acquisition/captureWatch.ts'
import { createStreamScale } from '#acquisition/streamScale.ts'
import { detectionSettings } from '#contract/breaks/detection.ts'
import type { EvaluationResult } from '#contract/breaks/evaluation.ts'
import type { Tare } from '#contract/calibration/forceScale.ts'
import { createRandom } from '#domain/numbers/random.ts'
import { movedClock } from '#tests/fakes/movedClock.ts'

const tareAt = (offset: number): Tare => ({ offset, sd: 0.3, readings: 20, takenAt: '2031-05-02T09:30:00.000Z' })

/** A watch that hears so many samples a second, each with the force in newtons that it is given. */
function heardWatch(rateHz: number) {
  const scale = createStreamScale(() => ({ kind: 'uncalibrated-scale', nPerCount: 1 }))
  scale.begin('counts')
  const stored: { timeUs: number[]; result: EvaluationResult | null }[] = []
  let tare: Tare | null = null
  const watch = createCaptureWatch({
    clock: movedClock(),
    settings: detectionSettings.parse({ capacityN: 25_000 }),
    armed: true,
    scale,
    zero: { tare: () => tare, dueAfterCapture() {} },
    listener: {
      begin: () => stored.push({ timeUs: [], result: null }),
      samples: ({ timeUs }) => stored.at(-1)!.timeUs.push(...timeUs),
      end: (result) => Object.assign(stored.at(-1)!, { result }),
    },
  })
  const noise = createRandom(9)
  let heard = 0
  function hear(forces: readonly number[]) {
    const readings = Float64Array.from(forces, (force) => force + noise.normal() * 0.3)
    const timeUs = readings.map((_, i) => Math.round(((heard + i) * 1e6) / rateHz))
    const tared = readings.map((reading) => reading - (tare?.offset ?? 0))
    heard += forces.length
    const timeS = timeUs.map((us) => us / 1e6)
    watch.take(timeUs, timeS, tared, readings, forces.length)
  }
  function zeroAt(offset: number) {
    tare = tareAt(offset)
    watch.learn(tare)
  }
  return { hear, zeroAt, stored }
}

it('stores every sample of a capture that begins in the second before the zero, and times its peak by them', () => {
  const { hear, zeroAt, stored } = heardWatch(24)
  const rest = Array.from({ length: 72 }, () => 0)
  const load = Array.from({ length: 100 }, (_, i) => 80 * (i + 1))
  // The zero is taken when a load is on already: the second that is heard again holds 12 of its samples.
  hear([...rest, ...load.slice(0, 12)])
  zeroAt(0)
  hear([...load.slice(12), ...rest])
  expect(stored).toHaveLength(1)
  const [{ timeUs, result }] = stored as [(typeof stored)[0]]
  expect(result).toMatchObject({ outcome: 'break', samples: timeUs.length })
  expect(timeUs[0]).toBe(0)
  expect(timeUs).toContain(Math.round(result!.peakTimeS! * 1e6))
})

it('stores both captures where one ends and another begins in that second', () => {
  const { hear, zeroAt, stored } = heardWatch(1000)
  const rest = Array.from({ length: 400 }, () => 0)
  const load = Array.from({ length: 100 }, (_, i) => 80 * (i + 1))
  hear([...rest, ...load, ...rest])
  zeroAt(0)
  hear([...rest, ...rest, ...rest, ...load, ...rest, ...rest, ...rest])
  expect(stored).toHaveLength(2)
  for (const { timeUs, result } of stored) {
    expect(result!.samples).toBe(timeUs.length)
    expect(timeUs).toContain(Math.round(result!.peakTimeS! * 1e6))
  }
})
