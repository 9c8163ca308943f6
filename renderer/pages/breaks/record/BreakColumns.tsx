import type { BreakRecord } from '#contract/breaks/break.ts'
import { resultInForce } from '#domain/strength/resultInForce.ts'
import { flagWords, verifiedRangeFlags } from '#words/breaks/flagWords.ts'
import { VerificationWords } from '../../../parts/VerificationWords.tsx'
import { BreakHistory } from './BreakHistory.tsx'
import { EvaluationNumbers } from './EvaluationNumbers.tsx'
import { LoadingFigures } from './loading/LoadingFigures.tsx'
import { LoadingJudgement } from './loading/LoadingJudgement.tsx'
import { Provenance } from './Provenance.tsx'

/** All that stands behind the result: how it was loaded, what to doubt, where it comes from, and what people said. */
export function BreakColumns({ record }: { record: BreakRecord }) {
  const { summary } = record
  const { verification } = summary
  const inForce = resultInForce(record)
  const flags = summary.flags.filter((flag) => verification === null || !verifiedRangeFlags.includes(flag))
  const asFound =
    summary.overruled === null ? null : (
      <p className="quiet">Times and rates are those of the peak found, not of the load that counts.</p>
    )
  return (
    <div className="break-columns">
      <section aria-labelledby="doubts-title">
        <h2 id="doubts-title">Remarks</h2>
        {verification === null ? null : <VerificationWords verification={verification} />}
        <ul className="flag-list">
          {summary.flags.length === 0 ? <li>No remarks.</li> : null}
          {flags.map((flag) => (
            <li key={flag}>{flagWords[flag]}</li>
          ))}
        </ul>
      </section>
      <section aria-labelledby="history-title">
        <h2 id="history-title">History</h2>
        <BreakHistory record={record} />
      </section>
      <section aria-labelledby="judgement-title">
        <h2 id="judgement-title">Loading against the test practice</h2>
        {inForce === null ? (
          <p className="empty-words">Not evaluated yet.</p>
        ) : (
          <>
            {asFound}
            <LoadingJudgement summary={summary} result={inForce.result} />
          </>
        )}
      </section>
      <section aria-labelledby="loading-title">
        <h2 id="loading-title">How it was loaded</h2>
        {inForce === null ? (
          <p className="empty-words">Not evaluated yet.</p>
        ) : (
          <>
            {asFound}
            <LoadingFigures result={inForce.result} />
          </>
        )}
      </section>
      <section aria-labelledby="numbers-title">
        <h2 id="numbers-title">Figures of the result</h2>
        {inForce === null ? (
          <p className="empty-words">Not evaluated yet.</p>
        ) : (
          <EvaluationNumbers record={record} evaluation={inForce} />
        )}
      </section>
      <section aria-labelledby="provenance-title">
        <h2 id="provenance-title">Origin of the data</h2>
        <Provenance record={record} />
      </section>
    </div>
  )
}
