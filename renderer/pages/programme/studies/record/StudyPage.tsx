import { useState } from 'react'
import type { StudyRecord } from '#contract/programme/studyRecord.ts'
import { cellsToAllocate } from '#domain/programme/study/allocation.ts'
import { cellKey } from '#domain/programme/study/cells.ts'
import { unreadableTrouble } from '#words/keeping/unreadableWords.ts'
import { progressWords } from '#words/programme/study/studyWords.ts'
import { useAnswer } from '../../../../host/useAnswer.ts'
import { DueLine } from '../../../../parts/programme/DueLine.tsx'
import { hashOf } from '../../../../routes/route.ts'
import { Notice } from '../../../../widgets/Notice.tsx'
import { AllocateDialog } from './AllocateDialog.tsx'
import { CellsTable } from './CellsTable.tsx'
import { StudyFacts } from './StudyFacts.tsx'
import './study.css'

/** One study: its groups with what became of their blocks, and every version of the plan. */
export function StudyPage({ studyId }: { studyId: number }) {
  const answer = useAnswer('studies.get', { studyId })
  if (answer.value === null)
    return (
      <div className="record-page">
        <Notice trouble={answer.error} />
      </div>
    )
  return <StudyView record={answer.value} />
}

function StudyView({ record }: { record: StudyRecord }) {
  const { current, counts } = record
  const { studyId, fields } = current
  const [allocating, setAllocating] = useState(false)
  const open = openIn(record)
  return (
    <div className="record-page study-page">
      <header className="record-head">
        <div>
          <p className="crumb">
            <a href={hashOf({ page: 'studies' })}>Studies</a>
          </p>
          <h1>{fields.title}</h1>
          {fields.question === '' ? null : <p className="record-words">{fields.question}</p>}
          <p className="study-progress">{progressWords(counts)}</p>
          <DueLine studyId={studyId} />
        </div>
        <div className="record-buttons">
          <a className="button" href={hashOf({ page: 'edit-study', studyId })}>
            {counts.allocated === 0 ? 'Change the plan' : 'Extend the study'}
          </a>
          <a className="button" href={hashOf({ page: 'due', studyId })}>
            Due
          </a>
          {counts.broken === 0 ? null : (
            <a className="button" href={hashOf({ page: 'findings', studyId })}>
              Findings
            </a>
          )}
          {counts.allocated === 0 ? null : (
            <>
              <a className="button" href={hashOf({ page: 'overview', studyId })}>
                Overview
              </a>
              <a className="button" href={hashOf({ page: 'labels', studyId })}>
                Labels
              </a>
            </>
          )}
          {counts.allocated === counts.glued ? null : (
            <a className="button" href={hashOf({ page: 'new-glue-up', studyId })}>
              Glue up
            </a>
          )}
          {counts.waiting === 0 ? null : (
            <a className="button" href={hashOf({ page: 'new-breaking', studyId })}>
              Break
            </a>
          )}
          {open.need === 0 ? null : (
            <button type="button" className="button button-primary" onClick={() => setAllocating(true)}>
              {counts.allocated === 0 ? 'Allocate the blocks' : `Allocate ${open.need} more`}
            </button>
          )}
        </div>
      </header>
      <Notice trouble={unreadableTrouble(record.unreadable)} />
      <CellsTable fields={fields} cells={record.cells} />
      <StudyFacts record={record} />
      {allocating ? <AllocateDialog study={current} need={open.need} onClose={() => setAllocating(false)} /> : null}
    </div>
  )
}

/** How many blocks are still to be allocated. */
function openIn({ current: { fields }, cells }: StudyRecord): { need: number } {
  const allocated = new Map(cells.map((cell) => [cellKey(cell), cell.allocated]))
  return { need: cellsToAllocate(fields, { cells: allocated }).reduce((sum, { blocks }) => sum + blocks, 0) }
}
