import { expect, test } from 'vitest'
import type { BreakRecord } from '#contract/breaks/break.ts'
import { type CurveEvent, curveEvent, type Evaluation, evaluation } from '#contract/breaks/evaluation.ts'
import { pickedSample, prematureSample } from '#domain/strength/overruling.ts'
import { evaluationOf, header, morning, rampAndFall } from '../../archive/storedStudy.ts'

type Judged = Pick<BreakRecord, 'header' | 'end' | 'evaluations' | 'inForceId'>

// Ten samples a second; the load rises by 10 counts, falls at 0.5 s and at 0.8 s, and rises higher after each.
const timeS = Float64Array.from({ length: 12 }, (_, i) => i / 10)
const readings = Float64Array.of(0, 10, 20, 30, 41, 25, 35, 45, 55, 30, 60, 70)
const curve = { timeS, readings }

const event = (change: Partial<CurveEvent>) =>
  curveEvent.parse({
    ...{ kind: 'pop-in', startTimeS: 0.41, endTimeS: 0.6, dropN: 0.1, dropPercent: 30, cycles: null },
    ...change,
  })

function record(events: CurveEvent[], change: Partial<Evaluation> = {}): Judged {
  const { result, ...made } = evaluationOf(rampAndFall(10, 100))
  return {
    header: { ...header(1, null), breakId: 7 },
    end: {
      ...{ breakId: 7, endedAt: morning, ending: 'complete', samples: 12, missingSamples: 0 },
      curveSha256: '0'.repeat(64),
    },
    evaluations: [evaluation.parse({ ...made, evaluationId: 3, breakId: 7, result: { ...result, events }, ...change })],
    inForceId: 3,
  }
}

test('takes the raw sample nearest to the time that was pointed at, the earlier of two', () => {
  expect(pickedSample(record([]), curve, 0.43)).toEqual({ timeS: 0.4, reading: 41 })
  expect(pickedSample(record([]), curve, 0.47)).toEqual({ timeS: 0.5, reading: 25 })
  expect(pickedSample(record([]), { timeS: Float64Array.of(0, 1), readings: Float64Array.of(5, 6) }, 0.5)).toEqual({
    timeS: 0,
    reading: 5,
  })
  expect(pickedSample(record([]), curve, 0)).toEqual({ timeS: 0, reading: 0 })
  expect(pickedSample(record([]), curve, 1.1)).toEqual({ timeS: 1.1, reading: 70 })
})

test.each([-0.001, 1.2])('refuses a time outside the curve: %d s', (wantedS) => {
  expect(() => pickedSample(record([]), curve, wantedS)).toThrow(
    expect.objectContaining({ code: 'invalid-input', message: expect.stringMatching(/from 0 s to 1.1 s/) }),
  )
})

test('refuses a curve without samples, a capture that runs and a break without a result', () => {
  const none = { timeS: new Float64Array(0), readings: new Float64Array(0) }
  expect(() => pickedSample(record([]), none, 0)).toThrow(/no samples/)
  expect(() => pickedSample({ ...record([]), end: null }, curve, 0.5)).toThrow(/still being recorded/)
  expect(() => prematureSample({ ...record([]), inForceId: null }, curve)).toThrow(/no result yet/)
})

test('finds the highest sample from 20 ms before the first early drop to its end', () => {
  // By hand: 0.39 s to 0.6 s holds 41, 25 and 35.
  expect(prematureSample(record([event({})]), curve)).toEqual({ timeS: 0.4, reading: 41 })
  // Without those 20 ms the sample before the drop would be missed.
  expect(prematureSample(record([event({ startTimeS: 0.42 })]), curve)).toEqual({ timeS: 0.4, reading: 41 })
  expect(prematureSample(record([event({ startTimeS: 0.43 })]), curve)).toEqual({ timeS: 0.6, reading: 35 })
})

test('takes the first of several drops, whatever their order and whatever else happened', () => {
  const events = [event({ startTimeS: 0.8, endTimeS: 1 }), event({}), event({ kind: 'plateau', startTimeS: 0.1 })]
  expect(prematureSample(record(events), curve).timeS).toBe(0.4)
})

test('takes the load before the first slip, although later ones begin higher', () => {
  const slips = event({ kind: 'stick-slip', startTimeS: 0.4, endTimeS: 1, cycles: 2 })
  expect(prematureSample(record([{ ...slips, periodS: 0.4 }]), curve)).toEqual({ timeS: 0.4, reading: 41 })
  // An older method told no period: (1 s - 0.4 s) / 2.
  expect(prematureSample(record([slips]), curve)).toEqual({ timeS: 0.4, reading: 41 })
})

test('goes by force, not by reading: a cell wired in reverse reads lowest where the load is highest', () => {
  const reversed = { timeS, readings: readings.map((reading) => -reading) }
  const scale = { kind: 'uncalibrated-scale', nPerCount: -0.01 } as const
  expect(prematureSample(record([event({})], { scale }), reversed)).toEqual({ timeS: 0.4, reading: -41 })
})

test('refuses a curve without an early drop, and says what to do instead', () => {
  expect(() => prematureSample(record([event({ kind: 'final-drop' })]), curve)).toThrow(
    expect.objectContaining({ code: 'conflict', hint: expect.stringMatching(/by hand/) }),
  )
})
