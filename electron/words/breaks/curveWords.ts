import type { BreakRecord } from '#contract/breaks/break.ts'
import type { CurveEvent } from '#contract/breaks/evaluation.ts'
import { resultInForce } from '#domain/strength/resultInForce.ts'
import { countOf } from '../units/counts.ts'
import { writeFixed } from '../units/numbers.ts'
import { instantWords } from '../units/times.ts'
import { eventNames } from './eventWords.ts'

/** What is written beside the marks of a curve. */
export const curveMarkNames = {
  peak: 'peak',
  found: 'peak found',
  'peak-picked': 'picked by hand',
  'premature-failure': 'failure as declared',
  onset: 'start of loading',
  break: 'break',
  rated: 'rated load',
} as const

/** What is written beside the mark of an event. */
export function eventMarkName(kind: CurveEvent['kind']): string {
  return kind === 'seating' ? 'seated' : eventNames[kind].toLowerCase()
}

/** The level at rest with the noise about it; null: how much is not known. */
export function restWords(noise: string | null): string {
  return noise === null ? 'zero' : `zero, noise SD ${noise}`
}

/** The line through the straight part, by where it meets the level at rest. */
export function seatedLineWords(zeroTimeS: number): string {
  return `through the straight part, from ${zeroTimeS.toFixed(3)} s`
}

/** A time on a curve, to the hundredth of a second. */
export function curveTime(timeS: number): string {
  return `${writeFixed(timeS, 2)} s`
}

/** A mark of a curve and when it is. */
export function curveMarkWords({ label, timeS }: { label: string; timeS: number }): string {
  return `${label}, ${curveTime(timeS)}`
}

/** A load curve by the break that it is of. */
export function loadCurveTitle({ breakId, startedAt }: { breakId: number; startedAt: string }): string {
  return `Load curve of break ${breakId}, ${instantWords(startedAt)}`
}

type Shown = Pick<BreakRecord, 'summary' | 'header' | 'end' | 'evaluations' | 'inForceId'>

/** Of which block a curve is, what its load rests on, and by which checksum its samples are known. */
export function curveAbout(record: Shown): string {
  const { number, adhesive } = record.summary
  const { scale } = resultInForce(record) ?? record.header
  const block = number === null ? 'No specimen' : ['Specimen', number, adhesive].filter(Boolean).join(' ')
  const force = scale.kind === 'calibration' ? `calibration ${scale.calibrationId}` : 'no calibration'
  const samples = record.end === null ? '' : ` Curve SHA-256 ${record.end.curveSha256.slice(0, 16)}.`
  return `${block}, ${force}.${samples}`
}

/** What a load curve shows, its marks in order of time. */
export function loadCurveWords(curve: {
  fromS: number
  toS: number
  marks: readonly { label: string; timeS: number }[]
  gaps: number
}): string {
  const marks = curve.marks
    .toSorted((a, b) => a.timeS - b.timeS)
    .map(({ label, timeS }) => `${label} at ${curveTime(timeS)}`)
  const said = marks.length === 0 ? ' Nothing is marked.' : ` In order: ${marks.join('; ')}.`
  const gaps = curve.gaps === 0 ? '' : ` Samples are missing in ${countOf(curve.gaps, 'place')}.`
  return `Load from ${curveTime(curve.fromS)} to ${curveTime(curve.toS)}.${said}${gaps}`
}
