import type { BreakRecord, BreakSummary } from '#contract/breaks/break.ts'
import type { GroupTraits } from '#contract/breaks/breakGroup.ts'
import type { ForceCurve } from '#contract/breaks/curve.ts'
import type { Decision } from '#contract/breaks/decision.ts'
import type { CurveEvent } from '#contract/breaks/evaluation.ts'
import { Trouble } from '#contract/errors.ts'
import type { Handlers } from '#contract/procedures.ts'
import { prematureIndex } from '#domain/signal/events/prematureLoad.ts'
import { scriptedCurve } from './scriptedCurve.ts'

type ReviewParts = {
  recordOf(breakId: number): BreakRecord
  changeBreak(breakId: number, change: Partial<BreakSummary>, more: Partial<BreakRecord>): BreakRecord
  breaks(): readonly BreakRecord[]
  at(minutes: number): string
}

type Reviewed = Pick<
  Handlers,
  | 'breaks.curve'
  | 'breaks.filtered'
  | 'breaks.slope'
  | 'breaks.group'
  | 'breaks.pickPeak'
  | 'breaks.declarePremature'
  | 'breaks.peakAsFound'
>

/** What blocks of an adhesive have in common. */
export const scriptedGroup = (adhesive: string): GroupTraits => ({
  adhesive,
  jointType: 'long grain to long grain',
  bondLineGapMm: 0,
  exposure: 'loft',
  ageMonths: 0,
})

/** Answers for the curve page: curves with the events that a result names drawn into them, and a person's word on the peak. */
export function scriptedReview({ recordOf, changeBreak, breaks, at: atMinute }: ReviewParts): Reviewed {
  const foundN = (record: BreakRecord) => inForce(record)?.result.peakN ?? record.summary.peakN

  function curveOf(breakId: number): ForceCurve {
    const record = recordOf(breakId)
    const result = inForce(record)?.result ?? null
    const { scale } = inForce(record) ?? record.header
    const rateHz = result?.sampleRateHz ?? 80
    const { timeS, readings } = scriptedCurve(foundN(record) ?? 4000, 7.4, rateHz, breakId)
    const force = withEvents(timeS, readings, result?.events ?? [])
    return { timeS, force, unit: scale.kind === 'none' ? 'counts' : 'N', samples: timeS.length }
  }

  /** Moves the middle of a window along the curve. */
  function windowed(curve: ForceCurve, windowS: number, value: (from: number, to: number) => number): ForceCurve {
    const half = Math.max(1, Math.round((windowS / 2) * 80))
    const force = Float64Array.from(curve.force, (_force, i) =>
      value(Math.max(i - half, 0), Math.min(i + half, curve.force.length - 1)),
    )
    return { ...curve, force }
  }

  function decide(
    breakId: number,
    kind: Decision['kind'],
    signature: { by: string; reason: string },
    at: { timeS: number; force: number } | null,
  ): BreakRecord {
    const record = recordOf(breakId)
    const { scale, tareOffset } = inForce(record)!
    const loadN = at === null || scale.kind === 'none' ? null : at.force
    const perCount = scale.kind === 'uncalibrated-scale' ? scale.nPerCount : 1
    const sample = at === null ? null : { timeS: at.timeS, reading: (at.force + tareOffset) / perCount }
    const recordedAt = atMinute(62 + record.decisions.length)
    const decision: Decision = {
      ...{ decisionId: record.decisions.length + 1, breakId, recordedAt, ...signature, kind },
      ...{ specimenId: null, cause: null, sample },
    }
    const foundPeakN = foundN(record)
    const word = kind === 'peak-picked' || kind === 'premature-failure' ? kind : null
    const peakN = word === null || sample === null ? foundPeakN : loadN
    const { areaMm2, flags } = record.summary
    const kept = flags.filter((one) => one !== 'peak-picked' && one !== 'premature-failure')
    return changeBreak(
      breakId,
      {
        peakN,
        strengthMPa: peakN === null || areaMm2 === null ? null : peakN / areaMm2,
        flags: word === null ? kept : [...kept, word],
        overruled:
          word === null || sample === null
            ? null
            : { kind: word, ...signature, recordedAt, timeS: sample.timeS, foundPeakN },
      },
      { decisions: [...record.decisions, decision] },
    )
  }

  return {
    'breaks.curve': async ({ breakId, fromS, toS }) => cut(curveOf(breakId), fromS, toS),
    'breaks.filtered': async ({ breakId, fromS, toS, filter }) => {
      if (filter.kind === 'cfc' && filter.frequencyClass > 60)
        throw new Trouble(
          'invalid-input',
          `CFC ${filter.frequencyClass} needs more samples a second than the 80 of this curve.`,
          'Choose a lower class or a moving average.',
        )
      const windowS = filter.kind === 'moving-average' ? filter.windowS : 0.25
      const curve = curveOf(breakId)
      const mean = (from: number, to: number) =>
        curve.force.subarray(from, to + 1).reduce((sum, one) => sum + one, 0) / (to - from + 1)
      return cut(windowed(curve, windowS, mean), fromS, toS)
    },
    'breaks.slope': async ({ breakId, fromS, toS, windowS }) => {
      const curve = curveOf(breakId)
      const slope = (from: number, to: number) =>
        (curve.force[to]! - curve.force[from]!) / (curve.timeS[to]! - curve.timeS[from]!)
      return cut(windowed(curve, windowS, slope), fromS, toS)
    },
    'breaks.group': async ({ breakId }) => {
      const { adhesive } = recordOf(breakId).summary
      const members = breaks().filter(({ summary }) => summary.adhesive === adhesive)
      return {
        common: adhesive === null ? null : scriptedGroup(adhesive),
        breakIds: members.map(({ summary }) => summary.breakId),
      }
    },
    'breaks.pickPeak': async ({ breakId, timeS, ...signature }) => {
      const curve = curveOf(breakId)
      const index = curve.timeS.findIndex((one) => one >= timeS - 0.5 / 80)
      const sample = { timeS: curve.timeS[index]!, force: curve.force[index]! }
      return decide(breakId, 'peak-picked', signature, sample)
    },
    'breaks.declarePremature': async ({ breakId, ...signature }) => {
      const { timeS, force } = curveOf(breakId)
      const index = prematureIndex(inForce(recordOf(breakId))?.result.events ?? [], timeS, force)
      if (index < 0) throw new Trouble('conflict', 'No early drop was found on this curve.', 'Pick the peak by hand.')
      return decide(breakId, 'premature-failure', signature, { timeS: timeS[index]!, force: force[index]! })
    },
    'breaks.peakAsFound': async ({ breakId, ...signature }) => decide(breakId, 'peak-as-found', signature, null),
  }
}

function inForce(record: BreakRecord) {
  return record.evaluations.find(({ evaluationId }) => evaluationId === record.inForceId)
}

function cut(curve: ForceCurve, fromS: number | null, toS: number | null): ForceCurve {
  const from = fromS === null ? 0 : curve.timeS.findIndex((time) => time >= fromS)
  const to = toS === null ? curve.timeS.length : curve.timeS.findLastIndex((time) => time <= toS) + 1
  return { ...curve, timeS: curve.timeS.slice(from, to), force: curve.force.slice(from, to) }
}

/** Lowers a curve where drops are said to be. No model of anything. */
function withEvents(
  timeS: ForceCurve['timeS'],
  force: ForceCurve['force'],
  events: readonly CurveEvent[],
): ForceCurve['force'] {
  const lowered = force.slice()
  for (const { kind, startTimeS, endTimeS, dropN, cycles } of events) {
    if ((kind !== 'pop-in' && kind !== 'stick-slip') || dropN === null) continue
    const lengthS = (endTimeS - startTimeS) / (cycles ?? 1)
    for (let i = 0; i < timeS.length; i++) {
      const share = (timeS[i]! - startTimeS) / lengthS
      if (share > 0 && share < (cycles ?? 1)) lowered[i]! -= dropN * (1 - (share % 1))
    }
  }
  return lowered
}
