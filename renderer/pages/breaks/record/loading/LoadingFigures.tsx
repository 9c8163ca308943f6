import type { EvaluationResult, LoadCourse } from '#contract/breaks/evaluation.ts'
import { writeFixed, writeNumber } from '#words/units/numbers.ts'
import type { Quantities } from '#words/units/quantities.ts'
import { useQuantities } from '../../../../host/useQuantities.ts'

/** How the load went from onset to failure, in figures. */
export function LoadingFigures({ result }: { result: EvaluationResult }) {
  const quantities = useQuantities()
  if (result.course === null)
    return (
      <p className="empty-words">
        {result.outcome === 'none'
          ? 'Nothing was loaded.'
          : 'An older method made this result and did not look at the course of the load. Evaluate again to have it.'}
      </p>
    )
  return (
    <dl className="facts">
      {courseLines(result.course, quantities).map(([name, words]) => (
        <div key={name}>
          <dt>{name}</dt>
          <dd>{words}</dd>
        </div>
      ))}
    </dl>
  )
}

/** The figures of a course, name and words; what is not known says so. */
export function courseLines(
  course: LoadCourse,
  { force, length, energy }: Pick<Quantities, 'force' | 'length' | 'energy'>,
): [string, string][] {
  const { timeToFailureS, timeToPeakS, meanRateNPerS, rateSpreadPercent, toe, impulseNs, pressSpeedMmPerS, workJ } =
    course
  const unknown = 'not known'
  const seconds = (value: number | null) => (value === null ? unknown : `${writeNumber(value, 2)} s`)
  const rate = (value: number) => `${force.number(value)}\u00a0${force.unit}/s`
  const speed = pressSpeedMmPerS === null ? null : pressSpeedMmPerS * 60 * length.factor
  return [
    ['Time to failure', seconds(timeToFailureS)],
    ['Time to the peak', seconds(timeToPeakS)],
    ['Mean rate, 10 to 90 % of the peak', meanRateNPerS === null ? unknown : rate(meanRateNPerS)],
    [
      'Spread of the rate',
      rateSpreadPercent === null ? unknown : `SD ${writeNumber(rateSpreadPercent, 1)}\u00a0% of the mean`,
    ],
    ['Peaks up to the break', String(course.peaks)],
    ['Line through the straight part', toe === null ? unknown : `meets zero at ${writeFixed(toe.zeroTimeS, 3)}\u00a0s`],
    ...(toe === null ? [] : [['Slope of that line', rate(toe.slopeNPerS)] satisfies [string, string]]),
    ['Area under load and time', impulseNs === null ? unknown : `${force.number(impulseNs)} ${force.unit}\u00a0s`],
    ['Speed of the press', speed === null ? 'not given' : `${writeNumber(speed, 2)} ${length.unit}/min`],
    [
      'Work to failure',
      workJ !== null
        ? `${energy.text(workJ)}${speed === null ? '' : ', at that speed'}`
        : speed === null
          ? 'not known without a speed'
          : unknown,
    ],
  ]
}
