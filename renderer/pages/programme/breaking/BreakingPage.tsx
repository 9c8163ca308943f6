import { useState } from 'react'
import type { BreakingRecord } from '#contract/programme/breakingProcedures.ts'
import { sessionReport } from '#domain/programme/breaking/sessionReport.ts'
import { simulatedMark } from '#words/keeping/demoWords.ts'
import { unreadableTrouble } from '#words/keeping/unreadableWords.ts'
import { progressWords } from '#words/programme/breakingWords.ts'
import { instantWords } from '#words/units/times.ts'
import { useAction } from '../../../host/useAction.ts'
import { useAnswer } from '../../../host/useAnswer.ts'
import { SignatureDialog } from '../../../parts/decisions/SignatureDialog.tsx'
import { go } from '../../../parts/routing/useRoute.ts'
import { hashOf } from '../../../routes/route.ts'
import { Notice } from '../../../widgets/Notice.tsx'
import { SessionGroups } from './SessionGroups.tsx'
import { DoubtfulBlocks, RepeatedBlocks, UnbrokenBlocks } from './SessionLists.tsx'
import './breaking.css'

/** One breaking session as it stands: its groups, what is suspicious, what to repeat, and what was passed over. It can be printed. */
export function BreakingPage({ breakingSessionId }: { breakingSessionId: number }) {
  const { value: record, error } = useAnswer('breaking.get', { breakingSessionId })
  return (
    <div className="plain-page breaking-report">
      <Notice trouble={error ?? unreadableTrouble(record?.unreadable)} />
      {record === null ? null : <BreakingView record={record} />}
    </div>
  )
}

function BreakingView({ record }: { record: BreakingRecord }) {
  const report = sessionReport(record.members)
  const isDemo = record.members.some(({ specimen }) => specimen.fields.demo)
  return (
    <>
      <SessionHead record={record} isDemo={isDemo} />
      <SessionGroups groups={report.groups} />
      <div className="breaking-lists">
        <DoubtfulBlocks doubtful={report.doubtful} />
        <RepeatedBlocks toRepeat={report.toRepeat} />
        <UnbrokenBlocks skipped={report.skipped} waiting={report.waiting} />
      </div>
    </>
  )
}

function SessionHead({ record, isDemo }: { record: BreakingRecord; isDemo: boolean }) {
  const [ending, setEnding] = useState(false)
  const end = useAction('breaking.end')
  const reopen = useAction('breaking.reopen')
  const { breakingSessionId, endedAt, title, startedAt, by } = record
  const left = record.specimenIds.length - record.broken - record.withdrawn
  return (
    <>
      <header className="record-head">
        <div>
          <p className="crumb breaking-screen-only">
            <a href={hashOf({ page: 'breakings' })}>Breaking sessions</a>
          </p>
          <h1>{title}</h1>
          <p className="record-words">
            {progressWords({ ...record, specimens: record.specimenIds.length })} · begun {instantWords(startedAt)}
            {by === '' ? '' : ` by ${by}`}
            {endedAt === null ? '' : ` · ended ${instantWords(endedAt)}`}
            {isDemo ? ` · ${simulatedMark}` : ''}
          </p>
        </div>
        <div className="record-buttons breaking-screen-only">
          <button type="button" className="button" onClick={() => print()}>
            Print
          </button>
          {endedAt === null ? (
            <>
              <a className="button" href={hashOf({ page: 'bench' })}>
                To the bench
              </a>
              <button type="button" className="button button-primary" onClick={() => setEnding(true)}>
                End the session
              </button>
            </>
          ) : left === 0 ? null : (
            <button
              type="button"
              className="button"
              aria-disabled={reopen.pending}
              onClick={async () => {
                if ((await reopen.run({ breakingSessionId, by, note: '' })) !== null) go({ page: 'bench' })
              }}
            >
              Go on with it
            </button>
          )}
        </div>
      </header>
      <Notice trouble={reopen.error} onDismiss={reopen.dismiss} />
      {ending ? (
        <SignatureDialog
          title="End the session"
          explains={
            left === 0
              ? 'Every block is broken. The bench goes back to all that wait.'
              : `${left} of its blocks are not broken: they go on waiting on the shelf, and the session can be gone on with.`
          }
          button="End the session"
          who="optional"
          why="optional"
          whyLabel="Note"
          pending={end.pending}
          error={end.error}
          onSign={async (signature) =>
            (await end.run({ breakingSessionId, by: signature?.by ?? '', note: signature?.reason ?? '' })) !== null
          }
          onClose={() => setEnding(false)}
        />
      ) : null}
    </>
  )
}
