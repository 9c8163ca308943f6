import type { ForceCurve } from '#contract/breaks/curve.ts'
import type { OverruledPeak } from '#contract/breaks/decision.ts'
import type { EvaluationResult } from '#contract/breaks/evaluation.ts'
import { nearestIndex } from '#domain/numbers/risingSearch.ts'
import { curveMarkNames, eventMarkName, restWords, seatedLineWords } from '#words/breaks/curveWords.ts'

/** A stretch of time, s. */
export type Span = { fromS: number; toS: number }
/** A named point of a curve. `shape` tells kinds apart without colour; word: a person's. `chosen`: one that is looked at. */
export type CurveMark = {
  timeS: number
  value: number
  label: string
  shape: 'peak' | 'onset' | 'break' | 'event' | 'word'
  chosen?: boolean
}

/** What an evaluation and a person say about a curve, forces in the unit of the curve. */
export type CurveScene = {
  /** Those that are named before others come first. */
  marks: readonly CurveMark[]
  levels: readonly { value: number; label: string; kind: 'alarm' }[]
  /** Where something lasted. */
  spans: readonly (Span & { chosen: boolean })[]
  /** Where samples are missing: nothing is drawn from one side to the other. */
  gaps: readonly Span[]
  /** The level at rest, and how far the noise reaches about it. */
  band: (Span & { value: number; halfWidth: number; label: string }) | null
  /** The straight line through the straight part. */
  line: { fromS: number; fromValue: number; toS: number; toValue: number; label: string } | null
}

/** Where there is nothing to say of a curve. */
export const bareScene: CurveScene = { marks: [], levels: [], spans: [], gaps: [], band: null, line: null }

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
  if (curve.timeS.length === 0) return bareScene
  return {
    marks: [...wordMark(parts), ...eventMarks(parts), ...peakMarks(parts)],
    levels: capacityN === null ? [] : [{ value: capacityN, label: curveMarkNames.rated, kind: 'alarm' }],
    spans: spansOf(result, parts.chosen),
    gaps: gapsOf(result),
    band: bandOf(parts),
    line: parts.seatedLine ? seatedLineOf(result) : null,
  }
}

function wordMark({ word, curve, force }: SceneParts): CurveMark[] {
  if (word === null) return []
  const { timeS, kind } = word.overruled
  const value = word.peakN ?? forceNear(curve.timeS, curve.force, timeS)
  return [{ timeS, value, label: `${curveMarkNames[kind]} ${force(value)}`, shape: 'word' }]
}

function peakMarks({ result, curve, word, force }: SceneParts): CurveMark[] {
  const at = (timeS: number) => forceNear(curve.timeS, curve.force, timeS)
  const marks: CurveMark[] = []
  const { peakTimeS, peakN, onsetTimeS, breakTimeS } = result
  if (peakTimeS !== null) {
    const name = word === null ? curveMarkNames.peak : curveMarkNames.found
    const label = peakN === null ? name : `${name} ${force(peakN)}`
    marks.push({ timeS: peakTimeS, value: peakN ?? at(peakTimeS), label, shape: 'peak' })
  }
  if (onsetTimeS !== null)
    marks.push({ timeS: onsetTimeS, value: at(onsetTimeS), label: curveMarkNames.onset, shape: 'onset' })
  if (breakTimeS !== null)
    marks.push({ timeS: breakTimeS, value: at(breakTimeS), label: curveMarkNames.break, shape: 'break' })
  return marks
}

/** The chosen event first, so that its name stands where the others must give way. */
function eventMarks({ result, curve, chosen }: SceneParts): CurveMark[] {
  const marks = result.events.map((event, index): CurveMark & { chosen: boolean } => {
    const atS = event.kind === 'seating' ? event.endTimeS : event.startTimeS
    return {
      timeS: atS,
      value: forceNear(curve.timeS, curve.force, atS),
      label: eventMarkName(event.kind),
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

function spansOf({ events }: EvaluationResult, chosen: number | null): CurveScene['spans'] {
  return events
    .map(({ startTimeS, endTimeS }, index) => ({ fromS: startTimeS, toS: endTimeS, chosen: index === chosen }))
    .filter((span) => span.chosen || span.toS > span.fromS)
}

/** Where samples are missing, by an evaluation. */
export function gapsOf({ events }: Pick<EvaluationResult, 'events'>): Span[] {
  return events
    .filter(({ kind }) => kind === 'gap')
    .map(({ startTimeS, endTimeS }) => ({ fromS: startTimeS, toS: endTimeS }))
}

/** Zero as the tare set it, and how far the noise reaches about it before the load. */
function bandOf({ result, curve, force }: SceneParts): CurveScene['band'] {
  const { noiseN, onsetTimeS } = result
  const fromS = curve.timeS[0] ?? 0
  return {
    fromS,
    toS: onsetTimeS ?? curve.timeS.at(-1) ?? fromS,
    value: 0,
    halfWidth: noiseN ?? 0,
    label: restWords(noiseN === null ? null : force(noiseN)),
  }
}

/** The line through the straight part from where it meets the level at rest up to the height of the peak. */
export function seatedLineOf({ course, peakN }: Pick<EvaluationResult, 'course' | 'peakN'>): CurveScene['line'] {
  const toe = course?.toe ?? null
  if (toe === null || peakN === null || !(toe.slopeNPerS > 0)) return null
  return {
    fromS: toe.zeroTimeS,
    fromValue: 0,
    toS: toe.zeroTimeS + peakN / toe.slopeNPerS,
    toValue: peakN,
    label: seatedLineWords(toe.zeroTimeS),
  }
}

/** A curve's own value nearest to a time, so that a mark stands on the line; 0 for a curve without samples. */
function forceNear(timeS: Float64Array, force: Float64Array, atS: number): number {
  return force[nearestIndex(timeS, atS)] ?? 0
}
