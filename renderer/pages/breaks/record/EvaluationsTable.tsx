import type { BreakRecord } from '#contract/breaks/break.ts'
import { resultInForce } from '#domain/strength/resultInForce.ts'
import { changedWords } from '#words/breaks/thresholdWords.ts'
import { scaleWords } from '#words/calibration/scaleWords.ts'
import { highestWeightWords } from '#words/calibration/verificationWords.ts'
import { signedNumber } from '#words/units/numbers.ts'
import { instantWords } from '#words/units/times.ts'
import { useAnswer } from '../../../host/useAnswer.ts'
import { useQuantities } from '../../../host/useQuantities.ts'
import { hashOf } from '../../../routes/route.ts'
import { changedSettings, standingOf } from './evaluationStanding.ts'

/** Every evaluation beside the others, newest first: how each was made, how far it lies from the one in force, and how it stands. */
export function EvaluationsTable({ record }: { record: BreakRecord }) {
  const quantities = useQuantities()
  const { forcePerCount } = quantities
  const { force, strength } = quantities
  const inForce = resultInForce(record)
  const reevaluated = record.evaluations.some(({ reevaluationId }) => reevaluationId !== null)
  const reevaluations = useAnswer('reevaluations.list', reevaluated ? {} : null)
  const areaMm2 = record.summary.areaMm2
  const verifications = new Map(record.verifications.map((one) => [one.evaluationId, one]))
  return (
    <table className="data-table">
      <thead>
        <tr>
          <th scope="col">Made</th>
          <th scope="col">Scale</th>
          <th scope="col">Method and settings</th>
          <th scope="col" className="numeric">
            Peak <span className="quiet">{force.unit}</span>
          </th>
          <th scope="col" className="numeric">
            Strength <span className="quiet">{strength.unit}</span>
          </th>
          <th scope="col" className="numeric">
            Difference from the one in force
          </th>
          <th scope="col" className="numeric">
            Uncertainty, <i>k</i> = 2
          </th>
          <th scope="col">Status</th>
        </tr>
      </thead>
      <tbody>
        {record.evaluations.toReversed().map((one) => {
          const verification = verifications.get(one.evaluationId) ?? null
          const { peakN } = one.result
          const baseN = inForce?.result.peakN ?? null
          const changed = changedWords(changedSettings(one.settings, record.header.settings), quantities)
          const standing = standingOf(one, record.inForceId, reevaluations.value?.rows ?? [])
          const differenceN = peakN === null || baseN === null || one === inForce ? null : peakN - baseN
          return (
            <tr key={one.evaluationId}>
              <td className="when">{instantWords(one.madeAt)}</td>
              <th scope="row">{scaleWords(one.scale, forcePerCount, verification?.name ?? null)}</th>
              <td>
                {one.method}; {changed.length === 0 ? 'as recorded' : changed.join(', ')}
              </td>
              <td className="numeric">{force.number(peakN)}</td>
              <td className="numeric">
                {strength.number(peakN === null || areaMm2 === null ? null : peakN / areaMm2)}
              </td>
              <td className="numeric">
                {differenceN === null
                  ? '–'
                  : `${signedNumber(differenceN * force.factor, 1)} ${force.unit}${baseN ? ` (${signedNumber((100 * differenceN) / baseN, 2)} %)` : ''}`}
              </td>
              <td className="numeric">
                {verification === null
                  ? 'not known'
                  : verification.expandedUncertaintyN === null
                    ? verification.timesVerified !== null && verification.timesVerified > 1
                      ? highestWeightWords(verification.timesVerified)
                      : 'outside the range'
                    : `±${force.number(verification.expandedUncertaintyN)}`}
              </td>
              <td>
                {standing === 'in force' ? <strong className="tag">in force</strong> : standing}
                {one.reevaluationId === null ? null : (
                  <>
                    {standing === 'kept' || standing === 'not in force' ? ', ' : ' '}
                    <a href={hashOf({ page: 'reevaluation', reevaluationId: one.reevaluationId })}>
                      re-evaluation {one.reevaluationId}
                    </a>
                  </>
                )}
              </td>
            </tr>
          )
        })}
      </tbody>
    </table>
  )
}
