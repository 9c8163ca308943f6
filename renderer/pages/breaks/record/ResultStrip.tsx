import type { BreakRecord } from '#contract/breaks/break.ts'
import type { EvaluationResult } from '#contract/breaks/evaluation.ts'
import { firstEarlyDrop } from '#domain/signal/events/prematureLoad.ts'
import { isLowerLimit } from '#domain/strength/lowerLimit.ts'
import { resultInForce } from '#domain/strength/resultInForce.ts'
import { decisionWords } from '#words/breaks/decisionWords.ts'
import { type SamplingBound, samplingBoundFigure } from '#words/breaks/samplingBoundWords.ts'
import { isUncalibrated } from '#words/calibration/scaleWords.ts'
import { endedSentence } from '#words/sentence.ts'
import { percentText, writeNumber } from '#words/units/numbers.ts'
import { instantWords } from '#words/units/times.ts'
import { useQuantities } from '../../../host/useQuantities.ts'
import { OverruledMark } from '../../../parts/decisions/OverruledMark.tsx'
import { StrengthQuestion } from '../../../parts/StrengthQuestion.tsx'
import { hashOf } from '../../../routes/route.ts'
import type { BreakDialog } from './breakDialog.ts'

/** The figures that count, and whose word they are: the program's or a person's. */
export function ResultStrip({ record, onAsk }: { record: BreakRecord; onAsk(dialog: BreakDialog): void }) {
  const { summary } = record
  const { strengthMPa } = summary
  const { force, strength } = useQuantities()
  const result = resultInForce(record)?.result ?? null
  const timeS = result?.course?.timeToFailureS ?? null
  const lowerLimit = isLowerLimit(summary, resultInForce(record)?.settings.capacityN ?? null)
  return (
    <section className="result-strip" aria-labelledby="result-title">
      <h2 id="result-title" className="visually-hidden">
        Result
      </h2>
      <dl className="strip-figures">
        <div>
          <dt>
            {peakName(record)}
            {isUncalibrated(summary.scaleKind) ? (
              <span className="tag">{summary.scaleKind === 'none' ? 'no scale' : 'uncalibrated'}</span>
            ) : null}
            {lowerLimit ? <strong className="tag">at least</strong> : null}
            {summary.verification === null ? null : (
              <a
                href={hashOf({ page: 'calibration-record', calibrationId: summary.verification.calibrationId })}
                title="The calibration that it was found with"
              >
                {summary.verification.name}
              </a>
            )}
          </dt>
          <dd className="strip-main">
            {force.number(summary.peakN)} {summary.peakN === null ? null : <small>{force.unit}</small>}
            <OverruledMark overruled={summary.overruled} />
          </dd>
        </div>
        <div>
          <dt>
            Shear strength {lowerLimit && strengthMPa !== null ? <strong className="tag">at least</strong> : null}
          </dt>
          {strengthMPa === null ? (
            <dd>{summary.outcome === 'break' ? (summary.peakN === null ? 'no scale' : 'area unknown') : 'none'}</dd>
          ) : (
            <dd className="strip-main">
              {strength.number(strengthMPa)} <small>{strength.unit}</small>
              <StrengthQuestion strengthMPa={strengthMPa} />
            </dd>
          )}
        </div>
        {/* Both belong to the peak found. */}
        {summary.overruled !== null ? null : (
          <>
            <div>
              <dt title="How far the true peak may lie above the highest sample">Sampling bound</dt>
              <dd>{samplingBoundFigure(boundOf(result), force)}</dd>
            </div>
            <div>
              <dt>Time to failure</dt>
              <dd>{timeS === null ? 'not known' : `${writeNumber(timeS, 2)} s`}</dd>
            </div>
          </>
        )}
        <div>
          <dt>Wood failure</dt>
          <dd>{summary.woodFailurePercent === null ? 'not assessed' : percentText(summary.woodFailurePercent)}</dd>
        </div>
      </dl>
      {result === null || result.outcome === 'none' ? null : <Word record={record} result={result} onAsk={onAsk} />}
    </section>
  )
}

function boundOf(result: EvaluationResult | null): SamplingBound {
  return { boundN: result?.samplingBoundN ?? null, percent: result?.samplingBoundPercent ?? null }
}

function peakName({ summary }: BreakRecord): string {
  if (summary.overruled?.kind === 'peak-picked') return 'Peak load, picked by hand'
  if (summary.overruled?.kind === 'premature-failure') return 'Failure load, as declared'
  return summary.outcome === 'break' ? 'Peak load' : 'Highest load'
}

/** Whose word the peak is, and the ways to disagree. */
function Word({
  record,
  result,
  onAsk,
}: {
  record: BreakRecord
  result: EvaluationResult
  onAsk(dialog: BreakDialog): void
}) {
  const { force } = useQuantities()
  const { overruled } = record.summary
  const drop = firstEarlyDrop(result.events)
  return (
    <div className="strip-word">
      {overruled === null ? (
        <p className="quiet">Found by the program. If it is wrong:</p>
      ) : (
        <p>
          <strong>
            {decisionWords[overruled.kind]} by {overruled.by}
          </strong>
          , {instantWords(overruled.recordedAt)}: {endedSentence(overruled.reason)}{' '}
          <span className="quiet">The program found: {force.text(overruled.foundPeakN)}.</span>
        </p>
      )}
      <div className="strip-buttons">
        <button type="button" className="button button-small" onClick={() => onAsk({ kind: 'pick', timeS: null })}>
          Pick the peak by hand
        </button>
        {drop === null || overruled?.kind === 'premature-failure' ? null : (
          <button type="button" className="button button-small" onClick={() => onAsk({ kind: 'premature' })}>
            Declare premature failure
          </button>
        )}
        {overruled === null ? null : (
          <button type="button" className="button button-small" onClick={() => onAsk({ kind: 'as-found' })}>
            Use the peak found
          </button>
        )}
      </div>
    </div>
  )
}
