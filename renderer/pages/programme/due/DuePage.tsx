import { useState } from 'react'
import type { PullState, PullSummary } from '#contract/programme/pullProcedures.ts'
import { demoFillingWords } from '#words/keeping/demoWords.ts'
import { unreadableTrouble } from '#words/keeping/unreadableWords.ts'
import { pullStateMeaning } from '#words/programme/pullWords.ts'
import { calendarDayWords } from '#words/units/calendarDays.ts'
import { countOf } from '#words/units/counts.ts'
import { useAction } from '../../../host/useAction.ts'
import { useAnswer } from '../../../host/useAnswer.ts'
import { saveFile } from '../../../parts/files/saveFile.ts'
import { StudyCrumb } from '../../../parts/programme/StudyCrumb.tsx'
import { go } from '../../../parts/routing/useRoute.ts'
import { hashOf } from '../../../routes/route.ts'
import { SelectField } from '../../../widgets/Field.tsx'
import { Notice } from '../../../widgets/Notice.tsx'
import { breakAddress, isOpenNow } from '../breaking/pullsToBreak.ts'
import { AddPullDialog } from './AddPullDialog.tsx'
import { PullTable } from './PullTable.tsx'
import { SeriesStockTable } from './SeriesStockTable.tsx'
import './due.css'

/** `isPast`: nothing is left to do, and a print to be hung up leaves it out. */
const groups: readonly { states: readonly PullState[]; title: string; isPast?: boolean }[] = [
  { states: ['late'], title: 'Late' },
  { states: ['due'], title: 'Due now' },
  { states: ['soon'], title: 'Soon' },
  { states: ['missed'], title: 'Missed' },
  { states: ['planned'], title: 'Planned' },
  { states: ['done', 'skipped'], title: 'Done and skipped', isPast: true },
]
/** So many rows of a group are shown before all are asked for. */
const firstRows = 40

/** What is due: every pull by its day, of one study or of all, to decide on, to print and to take into a calendar. */
export function DuePage({ studyId = null }: { studyId?: number | null | undefined }) {
  const all = useAnswer('pulls.list', { studyId: null })
  const calendar = useAction('pulls.calendar')
  const [adding, setAdding] = useState(false)
  const pulls = all.value?.pulls ?? []
  const studies = new Map(pulls.map((pull) => [pull.studyId, pull.studyTitle]))
  const shown = studyId === null ? pulls : pulls.filter((pull) => pull.studyId === studyId)
  const trouble = all.error ?? calendar.error ?? unreadableTrouble(all.value?.unreadable)

  async function saveCalendar(ofStudy: number): Promise<void> {
    const made = await calendar.run({ studyId: ofStudy })
    if (made !== null) saveFile(`pulls-of-study-${ofStudy}.ics`, made.text, 'text/calendar')
  }
  return (
    <div className="plain-page due-page">
      <header className="record-head">
        <div>
          {studyId === null ? null : (
            <p className="crumb screen-only">
              <StudyCrumb studyId={studyId} />
            </p>
          )}
          <h1>
            Due
            <span className="due-printed">
              : {studyId === null ? 'all studies' : (studies.get(studyId) ?? `study ${studyId}`)}
            </span>
          </h1>
          <p className="record-words">
            {all.value === null ? '' : `As of ${calendarDayWords(all.value.today)}. `}
            An age ends on the same day of the month, or on its last day where the month is shorter.
          </p>
        </div>
        <div className="record-buttons screen-only">
          <a className="button" href={breakAddress(studyId, shown.filter(isOpenNow))}>
            Break
          </a>
          <SelectField
            label="Study"
            value={studyId ?? ''}
            onChange={(event) => {
              const chosen = Number(event.currentTarget.value)
              go(chosen === 0 ? { page: 'due' } : { page: 'due', studyId: chosen })
            }}
          >
            <option value="">All studies</option>
            {[...studies].map(([id, title]) => (
              <option key={id} value={id}>
                {title}
              </option>
            ))}
          </SelectField>
          {studyId === null || shown.length === 0 ? null : (
            <>
              <button type="button" className="button" onClick={() => setAdding(true)}>
                Add a pull
              </button>
              <button
                type="button"
                className="button"
                aria-disabled={calendar.pending}
                onClick={() => void saveCalendar(studyId)}
              >
                Calendar file
              </button>
            </>
          )}
          <a className="button" href={hashOf(studyId === null ? { page: 'labels' } : { page: 'labels', studyId })}>
            Labels
          </a>
          <button type="button" className="button" aria-disabled={shown.length === 0} onClick={() => print()}>
            Print
          </button>
        </div>
      </header>
      <Notice trouble={trouble} />
      {all.value?.filling ? <p className="running-words">{demoFillingWords}</p> : null}
      {shown.length > 0 || all.value === null || all.value.filling ? null : (
        <p className="empty-words">
          No pull has a date yet. Pulls follow from the ages of a study, counted from the day on which its blocks are
          glued, or from its planned start.
        </p>
      )}
      {groups.map(({ states, title, isPast = false }) => (
        <PullGroup
          key={`${title} ${studyId}`}
          title={title}
          isPast={isPast}
          meaning={pullStateMeaning[states[0]!]}
          pulls={shown.filter(({ state }) => states.includes(state))}
          studyId={studyId}
        />
      ))}
      {studyId === null || all.value?.filling ? null : <SeriesStockTable studyId={studyId} />}
      {adding && studyId !== null ? (
        <AddPullDialog studyId={studyId} pulls={shown} onClose={() => setAdding(false)} />
      ) : null}
    </div>
  )
}

function PullGroup({
  title,
  isPast,
  meaning,
  pulls,
  studyId,
}: {
  title: string
  isPast: boolean
  meaning: string
  pulls: readonly PullSummary[]
  studyId: number | null
}) {
  const [isAll, setAll] = useState(false)
  if (pulls.length === 0) return null
  const shown = isAll ? pulls : pulls.slice(0, firstRows)
  return (
    <section className={`due-group ${isPast ? 'screen-only' : ''}`} aria-label={title}>
      <h2>
        {title} <span className="quiet">{countOf(pulls.length, 'pull')}</span>
      </h2>
      <p className="quiet">{meaning}</p>
      <PullTable pulls={shown} studyId={studyId} />
      {shown.length === pulls.length ? null : (
        <button type="button" className="button screen-only" onClick={() => setAll(true)}>
          Show all {pulls.length}
        </button>
      )}
    </section>
  )
}
