import { useCallback, useMemo, useState } from 'react'
import type { Overview } from '#contract/findings/overview.ts'
import { overviewGroups } from '#domain/findings/overview/overviewGroups.ts'
import { overviewDrawing, overviewSheetSize } from '#figures/findings/overview/overviewDrawing.ts'
import { overviewAbout, overviewRemarks, overviewSheetWords } from '#words/findings/overviewWords.ts'
import { simulatedShare } from '#words/keeping/figureOrigin.ts'
import { useHost, useStore } from '../../../host/hostContext.ts'
import { useAction } from '../../../host/useAction.ts'
import { useAnswer } from '../../../host/useAnswer.ts'
import { useQuantities } from '../../../host/useQuantities.ts'
import { FigureFileButtons } from '../../../parts/figures/FigureFileButtons.tsx'
import { useFigureOrigin } from '../../../parts/figures/useFigureOrigin.ts'
import { saveFile } from '../../../parts/files/saveFile.ts'
import { useKept } from '../../../parts/lists/useKept.ts'
import { StudyCrumb } from '../../../parts/programme/StudyCrumb.tsx'
import { go } from '../../../parts/routing/useRoute.ts'
import { hashOf } from '../../../routes/route.ts'
import { Notice } from '../../../widgets/Notice.tsx'
import { StudyPick } from '../StudyPick.tsx'
import { GroupDialog } from './GroupDialog.tsx'
import { GroupsFigure } from './GroupsFigure.tsx'
import { OverviewFilter } from './OverviewFilter.tsx'
import { allLevels, filterOf, firstOverviewSettings, type OverviewSettings, viewOf } from './overviewSettings.ts'
import { PrintedOverview } from './PrintedOverview.tsx'
import './overview.css'

/** Every block of a programme on one page: of one study or of all, as marks or as a table of means. */
export function OverviewPage({ studyId = null }: { studyId?: number | null | undefined }) {
  const [settings, setSettings] = useKept<OverviewSettings>('overview', firstOverviewSettings)
  const answer = useAnswer('overview.of', filterOf(studyId, settings))
  const studies = useAnswer('studies.list', {}).value?.rows ?? []
  const capabilities = useStore(useHost().info)?.capabilities ?? []
  const pdf = useAction('overview.pdf')
  const [printing, setPrinting] = useState(false)
  const forget = useCallback(() => setPrinting(false), [])
  const found = answer.value
  const change = (next: Partial<OverviewSettings>) => setSettings({ ...settings, ...next })
  const isEmpty = found === null || found.cells.length === 0
  const title = studies.find((one) => one.studyId === studyId)?.fields.title ?? 'All blocks'
  async function savePdf(): Promise<void> {
    if (isEmpty || pdf.pending) return
    const made = await pdf.run({ filter: filterOf(studyId, settings), view: viewOf(settings), title })
    if (made !== null) saveFile('overview.pdf', new Uint8Array(made.bytes), 'application/pdf')
  }
  return (
    <div className="record-page overview-page">
      <header className="record-head overview-screen-only">
        <div>
          <p className="crumb">
            <StudyCrumb studyId={studyId} />
            <a href={hashOf({ page: 'findings', ...(studyId === null ? {} : { studyId }) })}>Findings</a>
          </p>
          <h1>Overview</h1>
          <ViewWords view={settings.view} />
        </div>
        <div className="record-buttons">
          {capabilities.includes('print-to-pdf') ? (
            <button
              type="button"
              className="button"
              aria-disabled={isEmpty || pdf.pending}
              onClick={() => void savePdf()}
            >
              {pdf.pending ? 'Writing …' : 'Save as PDF'}
            </button>
          ) : null}
          <button type="button" className="button" aria-disabled={isEmpty} onClick={() => setPrinting(!isEmpty)}>
            Print on A3
          </button>
        </div>
      </header>
      <Notice trouble={answer.error ?? pdf.error} />
      {found === null ? null : (
        <>
          <OverviewFilter settings={settings} onSettings={change} levels={found.levels}>
            <StudyPick
              studyId={studyId}
              onStudy={(chosen) => {
                change(allLevels)
                go(chosen === null ? { page: 'overview' } : { page: 'overview', studyId: chosen })
              }}
            />
          </OverviewFilter>
          {isEmpty ? (
            <p className="empty-words">No block fits. Plan a study, add specimens, or choose less narrowly.</p>
          ) : (
            <Found found={found} settings={settings} title={title} printing={printing} onPrinted={forget} />
          )}
        </>
      )}
    </div>
  )
}

function ViewWords({ view }: Pick<OverviewSettings, 'view'>) {
  if (view === 'blocks')
    return <p className="record-words">Every block is one mark, and the marks of a group rise with their strength.</p>
  return (
    <p className="record-words">
      Means alone do not say which groups differ: <a href={hashOf({ page: 'findings' })}>findings do</a>.
    </p>
  )
}

function Found({
  found,
  settings,
  title,
  printing,
  onPrinted,
}: {
  found: Overview
  settings: OverviewSettings
  /** Of what it is. */
  title: string
  printing: boolean
  onPrinted(): void
}) {
  const quantities = useQuantities()
  const originOf = useFigureOrigin()
  const all = useMemo(() => overviewGroups(found), [found])
  const { groups, draw, words } = useMemo(
    () => overviewDrawing(all, viewOf(settings), quantities),
    [all, settings, quantities],
  )
  const sheetTitle = overviewSheetWords(found, title, new Date().toISOString())
  const [sight, setSight] = useState<number | null>(null)
  const [opened, setOpened] = useState<number | null>(null)
  const open = opened === null ? undefined : groups[opened]
  return (
    <>
      <p className="overview-title">{sheetTitle}</p>
      <Remarks found={found} />
      <p className="overview-sight" aria-hidden="true">
        {(sight === null ? undefined : words[sight]) ??
          'Point at a group, or reach it by Tab and arrow keys; Enter or a click opens it.'}
      </p>
      <GroupsFigure draw={draw} words={words} onSight={setSight} onOpen={setOpened} />
      {open === undefined ? null : <GroupDialog group={open} onClose={() => setOpened(null)} />}
      <FigureFileButtons
        size={overviewSheetSize}
        draw={draw}
        origin={() => originOf(overviewAbout(found, title), simulatedShare(found.simulated, found.numbers.length))}
      />
      {printing ? <PrintedOverview title={sheetTitle} draw={draw} onPrinted={onPrinted} /> : null}
    </>
  )
}

/** What has to be known beside the figure. */
function Remarks({ found }: { found: Overview }) {
  const remarks = overviewRemarks(found)
  return remarks.length === 0 ? null : <p className="running-words">{remarks.join(' ')}</p>
}
