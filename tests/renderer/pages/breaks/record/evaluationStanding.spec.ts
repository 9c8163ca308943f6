import { describe, expect, it } from 'vitest'
import { detectionSettings } from '#contract/breaks/detection.ts'
import { changedSettings, standingOf } from '#renderer/pages/breaks/record/evaluationStanding.ts'

describe('standingOf', () => {
  const decided = (kind: 'adopted' | 'dropped') => ({
    reevaluationId: 7,
    decisions: [
      {
        ...{ reevaluationDecisionId: 1, reevaluationId: 7, recordedAt: '2031-04-06T08:00:00.000Z' },
        ...{ by: 'bench 1', reason: 'seen', kind },
      },
    ],
  })
  const proposed = { evaluationId: 2, reevaluationId: 7 }

  it('says which one is in force, whoever made it', () => {
    expect(standingOf(proposed, 2, [decided('adopted')])).toBe('in force')
  })
  it('keeps those that were in force once', () => {
    expect(standingOf({ evaluationId: 1, reevaluationId: null }, 2, [])).toBe('kept')
    expect(standingOf(proposed, 3, [decided('adopted')])).toBe('kept')
  })
  it('calls a result of a re-evaluation proposed until somebody decides, and dropped after', () => {
    expect(standingOf(proposed, 1, [{ reevaluationId: 7, decisions: [] }])).toBe('proposed by')
    expect(standingOf(proposed, 1, [decided('dropped')])).toBe('not in force')
  })
})

describe('changedSettings', () => {
  const atCapture = detectionSettings.parse({ startThresholdN: 40, endCodes: [-8, 8] })

  it('names what differs and nothing else', () => {
    const made = { ...atCapture, breakDropShare: 0.3, endCodes: [-8, 9] as [number, number], startThresholdN: 55 }
    expect(changedSettings(made, atCapture)).toEqual({ breakDropShare: 0.3, endCodes: [-8, 9] })
  })
  it('is empty for the same settings', () => {
    expect(changedSettings(structuredClone(atCapture), atCapture)).toEqual({})
  })
})
