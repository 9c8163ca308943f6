import type { BreakRecord } from '#contract/breaks/break.ts'
import type { Evaluation } from '#contract/breaks/evaluation.ts'
import { writeCount, writeFixed, writeNumber } from '#words/units/numbers.ts'
import { instantWords } from '#words/units/times.ts'
import { useQuantities } from '../../../host/useQuantities.ts'

/** Times, samples, zero and noise of an evaluation. */
export function EvaluationNumbers({
  record: { header },
  evaluation: { result, scale, tareOffset },
}: {
  record: BreakRecord
  evaluation: Evaluation
}) {
  const { force } = useQuantities()
  const seconds = (value: number | null) => (value === null ? '–' : `${writeFixed(value, 3)} s`)
  const { tare } = header
  const inCounts = scale.kind === 'none'
  const written = (value: number) =>
    inCounts ? `${writeNumber(value, 1)} counts` : `${writeNumber(value * force.factor, 2)} ${force.unit}`
  const rate = result.loadingRateNPerS
  const lines: [string, string][] = [
    ['Start of loading', seconds(result.onsetTimeS)],
    ['Peak', seconds(result.peakTimeS)],
    ['Break', seconds(result.breakTimeS)],
    ['Loading rate before the peak', rate === null ? '–' : `${force.number(rate)} ${force.unit}/s`],
    ['Load left after the break', force.text(result.afterBreakN)],
    ['Zero', written(tareOffset)],
    ['Zero taken', tare === null ? 'never' : instantWords(tare.takenAt)],
    ...(tare === null
      ? []
      : [['SD of the zero', `${written(tare.sd)}, ${tare.readings} readings`] satisfies [string, string]]),
    ['Noise, SD', force.text(result.noiseN)],
    ['Sample rate', result.sampleRateHz === null ? '–' : `${writeNumber(result.sampleRateHz, 1)} Hz`],
    ['Samples', writeCount(result.samples)],
    ['Missing samples', writeCount(result.missingSamples)],
  ]
  return (
    <dl className="facts">
      {lines.map(([name, words]) => (
        <div key={name}>
          <dt>{name}</dt>
          <dd>{words}</dd>
        </div>
      ))}
    </dl>
  )
}
