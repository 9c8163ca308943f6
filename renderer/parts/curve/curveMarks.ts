import type { ForceCurve } from '#contract/breaks/curve.ts'
import type { OverruledPeak } from '#contract/breaks/decision.ts'
import type { EvaluationResult } from '#contract/breaks/evaluation.ts'
import { eventNames } from '#words/breaks/eventWords.ts'
import {
  type CurveScene,
  emptyScene,
  type NoiseBand,
  type ShadedSpan,
  type StraightLine,
} from '../../plots/recorded/curveScene.ts'
import { forceNear } from '../../plots/recorded/nearestSample.ts'
import type { PointMark } from '../../plots/recorded/plotMarks.ts'
import type { Span } from '../../plots/zoom.ts'

export type SceneParts = {
  result: EvaluationResult
  /** The whole curve as it is drawn, in the unit of its record. */
  curve: Pick<ForceCurve, 'timeS' | 'force'>
  /** The load that counts where a person's word stands in place of the peak found. */
  word: { overruled: OverruledPeak; peakN: number | null } | null
  /** Which event is chosen. */
  chosen: number | null
  seatedLine: boolean
  capacityN: number | null
  /** Writes a force with its unit. */
  force(forceN: number): string
}

/** Everything that an evaluation says about a curve, to be drawn on it. */
export function sceneOf(parts: SceneParts): CurveScene {
  const { result, curve, capacityN } = parts
  if (curve.timeS.length === 0) return emptyScene
  return {
    marks: [...wordMark(parts), ...eventMarks(parts), ...peakMarks(parts)],
    levels: capacityN === null ? [] : [{ value: capacityN, label: 'rated load', kind: 'alarm' }],
    spans: spansOf(result, parts.chosen),
    gaps: gapsOf(result),
    band: bandOf(parts),
    line: parts.seatedLine ? seatedLineOf(result) : null,
  }
}

function wordMark({ word, curve, force }: SceneParts): PointMark[] {
  if (word === null) return []
  const { timeS, kind } = word.overruled
  const value = word.peakN ?? forceNear(curve.timeS, curve.force, timeS)
  const name = kind === 'peak-picked' ? 'picked by hand' : 'failure as declared'
  return [{ timeS, value, label: `${name} ${force(value)}`, shape: 'word' }]
}

function peakMarks({ result, curve, word, force }: SceneParts): PointMark[] {
  const at = (timeS: number) => forceNear(curve.timeS, curve.force, timeS)
  const marks: PointMark[] = []
  const { peakTimeS, peakN, onsetTimeS, breakTimeS } = result
  if (peakTimeS !== null) {
    const name = word === null ? 'peak' : 'peak as found'
    const label = peakN === null ? name : `${name} ${force(peakN)}`
    marks.push({ timeS: peakTimeS, value: peakN ?? at(peakTimeS), label, shape: 'peak' })
  }
  if (onsetTimeS !== null)
    marks.push({ timeS: onsetTimeS, value: at(onsetTimeS), label: 'loading starts', shape: 'onset' })
  if (breakTimeS !== null) marks.push({ timeS: breakTimeS, value: at(breakTimeS), label: 'break', shape: 'break' })
  return marks
}

/** The chosen event first, so that its name stands where the others must give way. */
function eventMarks({ result, curve, chosen }: SceneParts): PointMark[] {
  const marks = result.events.map((event, index): PointMark & { chosen: boolean } => {
    const atS = event.kind === 'seating' ? event.endTimeS : event.startTimeS
    return {
      timeS: atS,
      value: forceNear(curve.timeS, curve.force, atS),
      label: event.kind === 'seating' ? 'seated' : eventNames[event.kind].toLowerCase(),
      shape: 'event',
      chosen: index === chosen,
    }
  })
  // A break has its own mark where the final drop begins
  const shown = marks.filter(
    (mark, index) => mark.chosen || result.events[index]?.kind !== 'final-drop' || result.breakTimeS === null,
  )
  return shown.toSorted((a, b) => Number(b.chosen) - Number(a.chosen))
}

function spansOf({ events }: EvaluationResult, chosen: number | null): ShadedSpan[] {
  return events
    .map(({ startTimeS, endTimeS }, index) => ({ fromS: startTimeS, toS: endTimeS, chosen: index === chosen }))
    .filter((span) => span.chosen || span.toS > span.fromS)
}

function gapsOf({ events }: EvaluationResult): Span[] {
  return events
    .filter(({ kind }) => kind === 'gap')
    .map(({ startTimeS, endTimeS }) => ({ fromS: startTimeS, toS: endTimeS }))
}

/** Zero as the tare set it, and how far the noise reaches about it before the load. */
function bandOf({ result, curve, force }: SceneParts): NoiseBand {
  const { noiseN, onsetTimeS } = result
  const fromS = curve.timeS[0] ?? 0
  return {
    fromS,
    toS: onsetTimeS ?? curve.timeS.at(-1) ?? fromS,
    value: 0,
    halfWidth: noiseN ?? 0,
    label: noiseN === null ? 'zero' : `zero, noise SD ${force(noiseN)}`,
  }
}

/** The line through the seated part from where it meets the level at rest up to the height of the peak. */
export function seatedLineOf({ course, peakN }: Pick<EvaluationResult, 'course' | 'peakN'>): StraightLine | null {
  const toe = course?.toe ?? null
  if (toe === null || peakN === null || !(toe.slopeNPerS > 0)) return null
  return {
    fromS: toe.zeroTimeS,
    fromValue: 0,
    toS: toe.zeroTimeS + peakN / toe.slopeNPerS,
    toValue: peakN,
    label: `through the seated part, from ${toe.zeroTimeS.toFixed(3)} s`,
  }
}
