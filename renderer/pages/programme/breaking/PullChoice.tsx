import type { PullSummary } from '#contract/programme/pullProcedures.ts'
import { pullStateMeaning, pullStateWords, pullTitle } from '#words/programme/pullWords.ts'
import { calendarDayWords } from '#words/units/calendarDays.ts'

/** Pulls to choose from: of which study, age and day of glue-up, when they are due, and how many blocks wait. */
export function PullChoice({
  pulls,
  chosen,
  onChosen,
}: {
  pulls: readonly PullSummary[]
  chosen: ReadonlySet<string>
  onChosen(chosen: ReadonlySet<string>): void
}) {
  if (pulls.length === 0) return <p className="empty-words">None. Blocks of a study wait here once they are glued.</p>
  function tick(key: string, isChosen: boolean): void {
    const next = new Set(chosen)
    if (isChosen) next.add(key)
    else next.delete(key)
    onChosen(next)
  }
  return (
    <table className="data-table breaking-pulls">
      <thead>
        <tr>
          <th scope="col">Pull</th>
          <th scope="col">Glued on</th>
          <th scope="col">Due on</th>
          <th scope="col" className="numeric">
            Waiting
          </th>
          <th scope="col" className="numeric">
            Broken
          </th>
        </tr>
      </thead>
      <tbody>
        {pulls.map((pull) => (
          <tr key={pull.key}>
            <td>
              <label>
                <input
                  type="checkbox"
                  checked={chosen.has(pull.key)}
                  onChange={(event) => tick(pull.key, event.currentTarget.checked)}
                />{' '}
                {pullTitle(pull)}
              </label>
            </td>
            <td className="when">{pull.gluedOn === null ? '' : calendarDayWords(pull.gluedOn)}</td>
            <td>
              {calendarDayWords(pull.dueOn)}{' '}
              <span className="tag" title={pullStateMeaning[pull.state]}>
                {pullStateWords[pull.state]}
              </span>
            </td>
            <td className="numeric">{pull.blocks.waiting}</td>
            <td className="numeric">{pull.blocks.broken}</td>
          </tr>
        ))}
      </tbody>
    </table>
  )
}
