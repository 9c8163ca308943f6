import type { BreakRecord } from '#contract/breaks/break.ts'
import { resultInForce } from '#domain/strength/resultInForce.ts'
import { endingWords } from '#words/breaks/outcomeWords.ts'
import { scaleWords } from '#words/calibration/scaleWords.ts'
import { writeNumber } from '#words/units/numbers.ts'
import { instantWords } from '#words/units/times.ts'
import { useQuantities } from '../../../host/useQuantities.ts'

/** The name of the calibration that the capture was made with, where an evaluation under it is there to say. */
function nameOf({ header, verifications }: BreakRecord): string | null {
  const { scale } = header
  if (scale.kind !== 'calibration') return null
  return verifications.find((one) => one.calibrationId === scale.calibrationId)?.name ?? null
}

/** Everything that leads from the number back to the device: session, scale, zero, settings, method, checksum. */
export function Provenance({ record }: { record: BreakRecord }) {
  const { force, forcePerCount } = useQuantities()
  const { header, end, session, evaluations } = record
  const inForce = resultInForce(record)
  const { settings } = header
  const inCounts = header.scale.kind === 'none'
  const written = (value: number) =>
    inCounts ? `${writeNumber(value, 1)} counts` : `${writeNumber(value * force.factor, 2)} ${force.unit}`
  const lines: [string, string][] = [
    ['Break', `${header.breakId}, session ${header.sessionId} of ${instantWords(session.startedAt)}`],
    ['Amplifier', session.source],
    ['Line format', session.lineFormat],
    ['Scale when recorded', scaleWords(header.scale, forcePerCount, nameOf(record))],
    ['Rated load', force.text(settings.capacityN)],
    ['Start threshold', settings.startThresholdN === null ? '–' : written(settings.startThresholdN)],
    ['Break is a fall of', `${writeNumber(settings.breakDropShare * 100, 1)} % within ${settings.breakDropWithinS} s`],
    ['Method', inForce === null ? '–' : inForce.method],
    ['Results', String(evaluations.length)],
    ['Program', session.program],
    ['Recording', end === null ? 'still running' : endingWords[end.ending]],
  ]
  return (
    <>
      <dl className="facts">
        {lines.map(([name, words]) => (
          <div key={name}>
            <dt>{name}</dt>
            <dd>{words}</dd>
          </div>
        ))}
      </dl>
      {end === null ? null : (
        <p className="checksum">
          Curve SHA-256 <code>{end.curveSha256}</code>
        </p>
      )}
    </>
  )
}
