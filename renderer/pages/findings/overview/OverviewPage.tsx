import { type ReactNode, useCallback, useMemo, useState } from 'react'
import type { Overview } from '#contract/findings/overview.ts'
import { overviewGroups } from '#domain/findings/overview/overviewGroups.ts'
import { boundedWords, simulatedBlocksWords } from '#words/findings/overviewWords.ts'
import { useAnswer } from '../../../host/useAnswer.ts'
import { useQuantities } from '../../../host/useQuantities.ts'
import { useKept } from '../../../parts/lists/useKept.ts'
import { go } from '../../../parts/routing/useRoute.ts'
import { hashOf } from '../../../routes/route.ts'
import { SelectField } from '../../../widgets/Field.tsx'
import { Notice } from '../../../widgets/Notice.tsx'
import { drawingOf } from './drawing.ts'
import { GroupDialog } from './GroupDialog.tsx'
import { GroupsFigure } from './GroupsFigure.tsx'
import { OverviewFilter } from './OverviewFilter.tsx'
import { allLevels, filterOf, firstOverviewSettings, type OverviewSettings } from './overviewSettings.ts'
import { PrintedOverview } from './PrintedOverview.tsx'
import './overview.css'

/** Every block of a programme on one page: of one study or of all, as marks or as a table of means. */
export function OverviewPage({ studyId = null }: { studyId?: number | null | undefined }) {
  const [settings, setSettings] = useKept<OverviewSettings>('overview', firstOverviewSettings)
  const answer = useAnswer('overview.of', filterOf(studyId, settings))
  const studies = useAnswer('studies.list', {}).value?.rows ?? []
  const found = answer.value
  const change = (next: Partial<OverviewSettings>) => setSettings({ ...settings, ...next })
  return (
    <div className="record-page overview-page">
      <Notice trouble={answer.error} />
      {found === null ? (
        <h1>Overview</h1>
      ) : (
        <Found
          found={found}
          settings={settings}
          title={studies.find((study) => study.studyId === studyId)?.fields.title ?? 'All blocks'}
        >
          <OverviewFilter settings={settings} onSettings={change} levels={found.levels}>
            <SelectField
              label="Study"
              value={studyId ?? ''}
              onChange={(event) => {
                const chosen = Number(event.currentTarget.value)
                change(allLevels)
                go(chosen === 0 ? { page: 'overview' } : { page: 'overview', studyId: chosen })
              }}
            >
              <option value="">all blocks</option>
              {studies.map((study) => (
                <option key={study.studyId} value={study.studyId}>
                  {study.fields.title}
                </option>
              ))}
            </SelectField>
          </OverviewFilter>
        </Found>
      )}
    </div>
  )
}

function Found({
  found,
  settings,
  title,
  children,
}: {
  found: Overview
  settings: OverviewSettings
  title: string
  children: ReactNode
}) {
  const quantities = useQuantities()
  const groups = useMemo(() => overviewGroups(found), [found])
  const { draw, words } = useMemo(() => drawingOf(groups, settings, quantities), [groups, settings, quantities])
  const [sight, setSight] = useState<number | null>(null)
  const [opened, setOpened] = useState<number | null>(null)
  const [printing, setPrinting] = useState(false)
  const forget = useCallback(() => setPrinting(false), [])
  const open = opened === null ? undefined : groups[opened]
  return (
    <>
      <header className="record-head overview-screen-only">
        <div>
          <h1>Overview</h1>
          <p className="record-words">
            {settings.view === 'blocks'
              ? 'Every block is one mark, and the marks of a group rise with their strength.'
              : 'Means beside each other do not say which groups differ; '}
            {settings.view === 'blocks' ? null : <a href={hashOf({ page: 'findings' })}>Findings does</a>}
          </p>
        </div>
        <div className="record-buttons">
          <button
            type="button"
            className="button"
            aria-disabled={groups.length === 0}
            onClick={() => setPrinting(groups.length > 0)}
          >
            Print on A3
          </button>
        </div>
      </header>
      {children}
      {groups.length === 0 ? (
        <p className="empty-words">No block fits. Plan a study, add specimens, or choose less narrowly.</p>
      ) : (
        <>
          <Remarks found={found} shown={groups.reduce((sum, { blocks }) => sum + blocks.length, 0)} />
          <p className="overview-sight" aria-hidden="true">
            {sight === null ? 'Point at a group, or reach it by Tab and arrow keys; Enter opens it.' : words[sight]}
          </p>
          <GroupsFigure draw={draw} words={words} onSight={setSight} onOpen={setOpened} />
        </>
      )}
      {open === undefined ? null : <GroupDialog group={open} onClose={() => setOpened(null)} />}
      {printing ? <PrintedOverview title={title} draw={draw} onPrinted={forget} /> : null}
    </>
  )
}

/** What has to be known beside the figure. */
function Remarks({ found, shown }: { found: Overview; shown: number }) {
  const remarks = [
    ...(shown < found.blocks ? [boundedWords(shown, found.blocks)] : []),
    ...(found.simulated === 0 ? [] : [simulatedBlocksWords(found.simulated, shown)]),
  ]
  return remarks.length === 0 ? null : <p className="running-words">{remarks.join(' ')}</p>
}
