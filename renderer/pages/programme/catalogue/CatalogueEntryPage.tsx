import { type ReactNode, useState } from 'react'
import type { CatalogueFields } from '#contract/programme/catalogue.ts'
import type { CatalogueRecord } from '#contract/programme/catalogueProcedures.ts'
import { catalogueKinds } from '#words/programme/catalogueWords.ts'
import { countOf } from '#words/units/counts.ts'
import type { Quantities } from '#words/units/quantities.ts'
import { instantWords } from '#words/units/times.ts'
import { useAnswer } from '../../../host/useAnswer.ts'
import { useQuantities } from '../../../host/useQuantities.ts'
import { hashOf } from '../../../routes/route.ts'
import { Notice } from '../../../widgets/Notice.tsx'
import { CorrectEntryDialog } from './EntryDialogs.tsx'
import { type EntryField, entryFieldsOf } from './entryForm.ts'
import { MergeDialog, TakeBackMergeDialog } from './MergeDialog.tsx'
import './catalogue.css'

/** One entry of the catalogue: what is known of it, every version of that, and what names it. */
export function CatalogueEntryPage({ entryId }: { entryId: number }) {
  const answer = useAnswer('catalogue.get', { entryId })
  if (answer.value === null)
    return (
      <div className="record-page">
        <Notice trouble={answer.error} />
      </div>
    )
  return <EntryView record={answer.value} />
}

function EntryView({ record }: { record: CatalogueRecord }) {
  const [dialog, setDialog] = useState<'correct' | 'merge' | 'take-back' | null>(null)
  const { entryId, fields, intoEntryId, versions } = record
  const isMerged = intoEntryId !== entryId
  const choice = { entryId, fields, intoEntryId }
  const close = () => setDialog(null)
  const into = nameIn(record, intoEntryId)
  return (
    <div className="record-page">
      <header className="record-head">
        <div>
          <p className="crumb">
            <a href={hashOf({ page: 'catalogue' })}>Catalogue</a>
          </p>
          <h1>{fields.name}</h1>
          <p className="record-words">
            {catalogueKinds[fields.kind].one}
            {isMerged ? (
              <>
                {' '}
                · counts as <a href={hashOf({ page: 'catalogue-entry', entryId: intoEntryId })}>{into}</a>
              </>
            ) : null}
          </p>
        </div>
        <div className="record-buttons">
          <button type="button" className="button" onClick={() => setDialog('correct')}>
            Correct
          </button>
          <button type="button" className="button" onClick={() => setDialog(isMerged ? 'take-back' : 'merge')}>
            {isMerged ? 'Take the merge back' : 'Merge into another'}
          </button>
        </div>
      </header>
      <div className="record-columns">
        <section className="record-facts" aria-labelledby="facts-title">
          <h2 id="facts-title">Details</h2>
          <Facts fields={fields} />
          <h2>History</h2>
          <History record={record} />
        </section>
        <section aria-labelledby="uses-title">
          <h2 id="uses-title">What names it</h2>
          <Uses record={record} />
        </section>
      </div>
      {dialog === 'correct' ? <CorrectEntryDialog entry={versions.at(-1)!} onClose={close} /> : null}
      {dialog === 'merge' ? <MergeDialog from={choice} onClose={close} /> : null}
      {dialog === 'take-back' ? <TakeBackMergeDialog entry={choice} into={into} onClose={close} /> : null}
    </div>
  )
}

function nameIn({ names }: CatalogueRecord, entryId: number): string {
  return names.find((one) => one.entryId === entryId)?.name ?? ''
}

function Facts({ fields }: { fields: CatalogueFields }) {
  const quantities = useQuantities()
  return (
    <dl className="facts">
      {entryFieldsOf(fields.kind)
        .filter(({ key }) => key !== 'name')
        .map((field) => (
          <div key={field.key}>
            <dt>{field.label}</dt>
            <dd>
              {factWords((fields as Record<string, string | number | null>)[field.key] ?? null, field, quantities)}
            </dd>
          </div>
        ))}
    </dl>
  )
}

function factWords(value: string | number | null, { typed, unit }: EntryField, { length, area }: Quantities): string {
  if (value === null || value === '') return '–'
  if (typeof value === 'string') return value
  if (typed === 'length') return length.text(value)
  return typed === 'area' ? area.text(value) : `${value} ${unit ?? ''}`
}

/** Every version and every decision, newest first. */
function History({ record }: { record: CatalogueRecord }) {
  const entered = record.versions.map(({ revision, recordedAt, by, reason, fields }) => ({
    key: `version ${revision}`,
    recordedAt,
    by,
    what: revision === 1 ? 'Entered' : `Corrected to "${fields.name}"`,
    reason,
  }))
  const decided = record.decisions.map((decision) => ({
    key: `decision ${decision.catalogueDecisionId}`,
    recordedAt: decision.recordedAt,
    by: decision.by,
    what: `${nameIn(record, decision.fromEntryId)} ${
      decision.kind === 'merged' ? 'merged into' : 'separated again from'
    } ${nameIn(record, decision.intoEntryId)}`,
    reason: decision.reason,
  }))
  const all = [...entered, ...decided].sort((a, b) => (a.recordedAt < b.recordedAt ? 1 : -1))
  return (
    <ol className="history">
      {all.map(({ key, recordedAt, by, what, reason }) => (
        <li key={key}>
          <p>
            <strong>{what}</strong> {instantWords(recordedAt)}
            {by === '' ? '' : ` by ${by}`}
          </p>
          {reason === '' ? null : <p className="quiet">{reason}</p>}
        </li>
      ))}
    </ol>
  )
}

function Uses({ record }: { record: CatalogueRecord }) {
  const { fields, specimens, studies, loggerFiles, parts, merged } = record
  const named = [studies, loggerFiles, parts, merged]
  if ((specimens ?? 0) === 0 && named.every(({ length }) => length === 0))
    return (
      <p className="empty-words">
        {fields.kind === 'operator'
          ? 'People are named in what they signed, which is not counted here.'
          : 'Nothing names it now.'}
      </p>
    )
  return (
    <div className="catalogue-uses">
      {specimens === null || specimens === 0 ? null : <p>{countOf(specimens, 'specimen')}</p>}
      <Names title="Studies">
        {studies.map(({ studyId, title }) => (
          <li key={studyId}>
            <a href={hashOf({ page: 'study', studyId })}>{title}</a>
          </li>
        ))}
      </Names>
      <Names title="Logger files">
        {loggerFiles.map((name) => (
          <li key={name}>
            <a href={hashOf({ page: 'climate' })}>{name}</a>
          </li>
        ))}
      </Names>
      <Names title={fields.kind === 'wood' ? 'Its boards' : 'Its lots'}>{parts.map(entryLink)}</Names>
      <Names title="Merged into it">{merged.map(entryLink)}</Names>
    </div>
  )
}

const entryLink = ({ entryId, name }: { entryId: number; name: string }) => (
  <li key={entryId}>
    <a href={hashOf({ page: 'catalogue-entry', entryId })}>{name}</a>
  </li>
)

function Names({ title, children }: { title: string; children: ReactNode[] }) {
  if (children.length === 0) return null
  return (
    <>
      <h3>{title}</h3>
      <ul>{children}</ul>
    </>
  )
}
