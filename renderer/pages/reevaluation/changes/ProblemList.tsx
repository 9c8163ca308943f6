import type { ReevaluationEnd } from '#contract/reevaluation/reevaluation.ts'
import { countOf } from '#words/units/counts.ts'
import { writeCount } from '#words/units/numbers.ts'
import { hashOf } from '../../../routes/route.ts'
import { problemGroups } from './problemGroups.ts'
import './changes.css'

/** Breaks named for one reason before the rest is only counted. */
const mostNamed = 12

/** Breaks that could not be evaluated, by reason. Their results in force stay. */
export function ProblemList({ problems }: { problems: ReevaluationEnd['problems'] }) {
  if (problems.length === 0) return null
  return (
    <section className="problems" aria-labelledby="problems-title">
      <h2 id="problems-title">
        {countOf(problems.length, 'break')} could not be evaluated; the results in force stay as they are
      </h2>
      <ul className="flag-list">
        {problemGroups(problems).map(({ message, breakIds }) => (
          <li key={message}>
            {message}{' '}
            <span className="quiet">
              {breakIds.slice(0, mostNamed).map((breakId) => (
                <a key={breakId} href={hashOf({ page: 'break', breakId })}>
                  Break {breakId}
                </a>
              ))}
              {breakIds.length > mostNamed ? `and ${writeCount(breakIds.length - mostNamed)} more` : ''}
            </span>
          </li>
        ))}
      </ul>
    </section>
  )
}
