import type { BreakSummary } from '#contract/breaks/break.ts'
import { breakTitle } from '#words/breaks/breakRowLabel.ts'
import { isSimulated, simulatedMark } from '#words/keeping/demoWords.ts'
import { severalResultsWords } from '#words/specimens/resultsWords.ts'
import { instantWords } from '#words/units/times.ts'
import { useAction } from '../../../host/useAction.ts'
import { go } from '../../../parts/routing/useRoute.ts'
import { hashOf, mostCompared } from '../../../routes/route.ts'
import { Notice } from '../../../widgets/Notice.tsx'
import type { BreakDialog } from './breakDialog.ts'

/** Which break it is, and what can be done with its record. */
export function BreakHead({
  summary,
  evaluated,
  onAsk,
}: {
  summary: BreakSummary
  evaluated: boolean
  onAsk(dialog: BreakDialog): void
}) {
  const group = useAction('breaks.group')
  const several = severalResultsWords(summary.resultsOfSpecimen)
  async function compare(): Promise<void> {
    const answer = await group.run({ breakId: summary.breakId })
    if (answer === null) return
    const { breakId } = summary
    const others = answer.breakIds.filter((other) => other !== breakId)
    go({ page: 'compare', breakIds: [breakId, ...others].slice(0, mostCompared) })
  }
  return (
    <>
      <header className="record-head">
        <div>
          <p className="crumb">
            <a href={hashOf({ page: 'breaks' })}>Breaks</a>
            {summary.specimenId === null ? null : (
              <a href={hashOf({ page: 'specimen', specimenId: summary.specimenId })}>Specimen {summary.number}</a>
            )}
          </p>
          <h1>{breakTitle(summary)}</h1>
          <p className="record-words">
            {instantWords(summary.startedAt)}
            {summary.adhesive === null ? '' : ` · ${summary.adhesive}`}
            {isSimulated(summary) ? ` · ${simulatedMark}` : ''}
          </p>
        </div>
        <div className="record-buttons">
          <button type="button" className="button" onClick={() => onAsk({ kind: 'assess' })}>
            Describe the faces
          </button>
          <button
            type="button"
            className="button"
            aria-disabled={!evaluated || group.pending}
            onClick={() => void compare()}
          >
            Compare with its group
          </button>
          <button
            type="button"
            className="button"
            aria-disabled={!evaluated}
            onClick={() => go({ page: 'new-reevaluation', breakId: summary.breakId })}
          >
            Evaluate again
          </button>
          <button type="button" className="button" onClick={() => onAsk({ kind: 'reassign' })}>
            Move to another specimen
          </button>
          <button
            type="button"
            className="button"
            onClick={() => onAsk({ kind: summary.setAside === null ? 'set-aside' : 'take-back' })}
          >
            {summary.setAside === null ? 'Set aside' : 'Count again'}
          </button>
        </div>
      </header>
      <Notice trouble={group.error} onDismiss={group.dismiss} />
      {several === null ? null : (
        <p className="running-words" role="status">
          <strong>{several}</strong>
        </p>
      )}
    </>
  )
}
