import type { TemperatureUnit } from '#contract/findings/climate.ts'
import type { ClimateOutcome } from '#contract/findings/climateAnswers.ts'
import { climateGapWords, climateOutcomeWords, loggerRowWords } from '#words/findings/climate/climateWords.ts'
import { countOf, ofWords } from '#words/units/counts.ts'

/** What the rows of a logger's file become, or became. */
export function OutcomeSection({ outcome, unit }: { outcome: ClimateOutcome; unit: TemperatureUnit }) {
  const rejected = outcome.rows.filter(({ fate }) => fate === 'rejected')
  const others = outcome.rows.filter(({ fate }) => fate !== 'rejected')
  return (
    <section className="climate-outcome" aria-label="What the rows become">
      <h2>What the rows {outcome.dryRun ? 'would become' : 'became'}</h2>
      <p role="status">{climateOutcomeWords(outcome)}</p>
      {rejected.length === 0 ? null : (
        <details open>
          <summary>
            Rejected:{' '}
            {rejected.length < outcome.rejected
              ? ofWords(rejected.length, outcome.rejected)
              : countOf(outcome.rejected, 'row')}
          </summary>
          <ul>
            {rejected.map((row) => (
              <li key={row.row}>{loggerRowWords(row, unit)}</li>
            ))}
          </ul>
        </details>
      )}
      {outcome.gaps.length === 0 ? null : (
        <details open>
          <summary>{countOf(outcome.gapCount, 'gap')}</summary>
          <ul>
            {outcome.gaps.map((gap) => (
              <li key={gap.fromS}>{climateGapWords(gap)}</li>
            ))}
          </ul>
        </details>
      )}
      {others.length === 0 ? null : (
        <details open={outcome.dryRun}>
          <summary>The first readings</summary>
          <ul>
            {others.map((row) => (
              <li key={row.row}>{loggerRowWords(row, unit)}</li>
            ))}
          </ul>
        </details>
      )}
    </section>
  )
}
