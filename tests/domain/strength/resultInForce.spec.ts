import { expect, test } from 'vitest'
import { type Evaluation, evaluation } from '#contract/breaks/evaluation.ts'
import { resultInForce, scaleInForce } from '#domain/strength/resultInForce.ts'
import { evaluationOf, header, rampAndFall } from '../../archive/storedStudy.ts'

const made = (evaluationId: number, nPerCount: number, tareOffset: number): Evaluation =>
  evaluation.parse({
    ...evaluationOf(rampAndFall(10, 100)),
    ...{ evaluationId, breakId: 7, scale: { kind: 'uncalibrated-scale', nPerCount }, tareOffset },
  })
const captured = { ...header(1, null), breakId: 7 }
const evaluations = [made(3, 0.01, 1), made(4, 0.02, 2)]

test('takes the evaluation that a decision put in force, although a newer one is there', () => {
  const record = { header: captured, evaluations, inForceId: 3 }
  expect(resultInForce(record)?.evaluationId).toBe(3)
  expect(scaleInForce(record)).toEqual({ scale: { kind: 'uncalibrated-scale', nPerCount: 0.01 }, tareOffset: 1 })
})

test('takes scale and zero of the capture while there is no result', () => {
  const tare = { offset: 5, sd: 1, readings: 80, takenAt: captured.startedAt }
  const record = { header: { ...captured, tare }, evaluations: [], inForceId: null }
  expect(resultInForce(record)).toBeNull()
  expect(scaleInForce(record)).toEqual({ scale: captured.scale, tareOffset: 5 })
  expect(scaleInForce({ ...record, header: { ...captured, tare: null } }).tareOffset).toBe(0)
})
