import { useEffect, useState } from 'react'
import type { LabelChoice } from '#contract/programme/labelProcedures.ts'
import type { LabelSheet } from '#contract/programme/labelSheet.ts'
import { countOf } from '#words/units/counts.ts'
import { useHost, useStore } from '../../../host/hostContext.ts'
import { useAction } from '../../../host/useAction.ts'
import { useAnswer } from '../../../host/useAnswer.ts'
import { saveFile } from '../../../parts/files/saveFile.ts'
import { specimenSelection } from '../../../parts/lists/selectionStore.ts'
import { StudyCrumb } from '../../../parts/programme/StudyCrumb.tsx'
import { hashOf } from '../../../routes/route.ts'
import { Notice } from '../../../widgets/Notice.tsx'
import { adoptPrintedSize } from './adoptPrintedSize.ts'
import { LabelChoiceFields } from './LabelChoiceFields.tsx'
import { choiceOf, firstSheet, type LabelDraft, sheetOf } from './labelDraft.ts'
import { SheetFields } from './SheetFields.tsx'
import './labels.css'

/** More pages than this nobody prints at once. */
const mostPages = 1000

/** Sheets of labels: which, on what paper, how they look, and printed in exact millimetres. */
export function LabelsPage({ studyId = null }: { studyId?: number | null | undefined }) {
  const capabilities = useStore(useHost().info)?.capabilities ?? []
  const selected = specimenSelection.use()
  const [draft, setDraft] = useState<LabelDraft>(() => firstSheet(studyId, selected.length))
  const [page, setPage] = useState(0)
  const [printed, setPrinted] = useState<{ drawn: string[]; sheet: LabelSheet } | null>(null)
  const all = useAction('labels.pages')
  const pdf = useAction('labels.pdf')
  const choice = choiceOf(draft, selected)
  const sheet = sheetOf(draft)
  const asked = choice === null || sheet === null ? null : { choice, sheet }
  const preview = useAnswer('labels.pages', asked === null ? null : { ...asked, from: page, count: 1 })
  const made = asked === null || preview.error !== null ? null : preview.value
  useEffect(() => {
    if (printed === null) return
    const forget = adoptPrintedSize(printed.sheet)
    print()
    forget()
    setPrinted(null)
  }, [printed])

  function change(next: Partial<LabelDraft>): void {
    setDraft((before) => ({ ...before, ...next }))
    setPage(0)
  }
  async function savePdf(): Promise<void> {
    if (asked === null) return
    const made = await pdf.run(asked)
    if (made !== null) saveFile(`${nameOf(asked.choice)}.pdf`, new Uint8Array(made.bytes), 'application/pdf')
  }
  async function printAll(): Promise<void> {
    if (asked === null) return
    const answer = await all.run({ ...asked, from: 0, count: mostPages })
    if (answer !== null) setPrinted({ drawn: answer.drawn, sheet: asked.sheet })
  }
  const isReady = made !== null && made.labels > 0
  return (
    <>
      <div className="plain-page labels-page">
        <header className="record-head">
          <div>
            <p className="crumb">
              <StudyCrumb studyId={studyId} />
              <a href={hashOf(studyId === null ? { page: 'due' } : { page: 'due', studyId })}>Due</a>
            </p>
            <h1>Labels</h1>
            <p className="record-words">
              Each label carries the number in large type, the same number as a QR code, and its group. The last digit
              of a number is its check digit.
            </p>
          </div>
          <div className="record-buttons">
            {capabilities.includes('print-to-pdf') ? (
              <button
                type="button"
                className="button"
                aria-disabled={!isReady || pdf.pending}
                onClick={() => void savePdf()}
              >
                {pdf.pending ? 'Writing …' : 'Save as PDF'}
              </button>
            ) : null}
            <button
              type="button"
              className="button button-primary"
              aria-disabled={!isReady || all.pending}
              onClick={() => void printAll()}
            >
              Print
            </button>
          </div>
        </header>
        <div className="labels-columns">
          <div className="labels-fields">
            <LabelChoiceFields draft={draft} selected={selected} onChange={change} />
            <SheetFields draft={draft} onChange={change} />
          </div>
          <section className="labels-preview" aria-label="Preview">
            <Notice trouble={asked === null ? null : (preview.error ?? pdf.error ?? all.error)} />
            {made === null ? (
              <p className="empty-words">{asked === null ? 'Choose a study or numbers, and a sheet.' : ''}</p>
            ) : (
              <Preview made={made} page={page} onTurn={setPage} />
            )}
          </section>
        </div>
      </div>
      {printed === null ? null : (
        <div className="labels-print">
          <Pages drawn={printed.drawn} label="Labels" />
        </div>
      )}
    </>
  )
}

/** One page as it will be printed, and the way to the others. */
function Preview({
  made,
  page,
  onTurn,
}: {
  made: { labels: number; pages: number; drawn: string[] }
  page: number
  onTurn(page: number): void
}) {
  return (
    <>
      <div className="labels-turn">
        <p aria-live="polite">
          {countOf(made.labels, 'label')} on {countOf(made.pages, 'page')}. Page {page + 1}:
        </p>
        <button
          type="button"
          className="button"
          aria-disabled={page === 0}
          onClick={() => onTurn(Math.max(0, page - 1))}
        >
          Page before
        </button>
        <button
          type="button"
          className="button"
          aria-disabled={page + 1 >= made.pages}
          onClick={() => onTurn(Math.min(made.pages - 1, page + 1))}
        >
          Next page
        </button>
      </div>
      <Pages drawn={made.drawn} label={`Page ${page + 1} of the labels`} />
    </>
  )
}

/** Every word in these texts was escaped where it was written. */
function Pages({ drawn, label }: { drawn: readonly string[]; label: string }) {
  return (
    <div className="labels-drawn" role="img" aria-label={label} dangerouslySetInnerHTML={{ __html: drawn.join('') }} />
  )
}

function nameOf(choice: LabelChoice): string {
  if (choice.kind === 'study') return `labels-of-study-${choice.studyId}`
  return choice.kind === 'numbers' ? `labels-${choice.first}-${choice.last}` : 'labels'
}
