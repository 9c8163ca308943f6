import { useState } from 'react'
import type { CatalogueKind } from '#contract/programme/catalogue.ts'
import type { CatalogueChoice, CatalogueRow, LikeNames } from '#contract/programme/catalogueProcedures.ts'
import { folded } from '#domain/text/naturalOrder.ts'
import { alikeWords, catalogueKinds, entryDetail } from '#words/programme/catalogueWords.ts'
import { writeCount } from '#words/units/numbers.ts'
import { useAnswer } from '../../../host/useAnswer.ts'
import { useKept } from '../../../parts/lists/useKept.ts'
import { hashOf } from '../../../routes/route.ts'
import { Choice } from '../../../widgets/Choice.tsx'
import { Notice } from '../../../widgets/Notice.tsx'
import { AddEntryDialog } from './EntryDialogs.tsx'
import { MergeDialog } from './MergeDialog.tsx'
import './catalogue.css'

/** A longer list is narrowed by its name. */
const mostRows = 500

/** Everything that specimens and studies name, by kind, with what may be one thing. */
export function CataloguePage() {
  const [kind, setKind] = useKept<CatalogueKind>('catalogue kind', 'adhesive')
  const [text, setText] = useKept('catalogue text', '')
  const [adding, setAdding] = useState(false)
  const [merging, setMerging] = useState<{ from: CatalogueChoice; into: number } | null>(null)
  const counts = useAnswer('catalogue.counts', {})
  const list = useAnswer('catalogue.list', { kind })
  const own = (list.value?.rows ?? []).filter(({ entryId, intoEntryId }) => entryId === intoEntryId)
  const found = own.filter(({ fields }) => folded(`${fields.name} ${entryDetail(fields) ?? ''}`).includes(folded(text)))
  return (
    <div className="plain-page">
      <header className="record-head">
        <div>
          <p className="crumb">
            <a href={hashOf({ page: 'specimens' })}>Specimens</a>
          </p>
          <h1>Catalogue</h1>
          <p className="record-words">
            What specimens and studies name. Whatever a record names for the first time is entered here by itself.
          </p>
        </div>
        <div className="record-buttons">
          <button type="button" className="button button-primary" onClick={() => setAdding(true)}>
            Add {catalogueKinds[kind].oneMore}
          </button>
        </div>
      </header>
      <Notice trouble={list.error ?? counts.error} />
      <div className="catalogue-tools">
        <Choice label="Kind" labelHidden options={kindOptions(counts.value ?? [])} value={kind} onChange={setKind} />
        <label className="search">
          <span className="visually-hidden">Find a name</span>
          <input
            type="search"
            placeholder="Find a name"
            value={text}
            maxLength={200}
            onChange={(event) => setText(event.currentTarget.value)}
          />
        </label>
      </div>
      <Alike pairs={list.value?.alike ?? []} rows={own} onMerge={setMerging} />
      {found.length === 0 ? (
        <p className="empty-words">
          {list.pending ? '' : own.length === 0 ? 'Nothing of this kind is named yet.' : 'No name fits.'}
        </p>
      ) : (
        <EntryTable rows={found.slice(0, mostRows)} />
      )}
      {found.length > mostRows ? (
        <p className="quiet">{writeCount(found.length - mostRows)} more: find a name.</p>
      ) : null}
      {adding ? <AddEntryDialog kind={kind} onClose={() => setAdding(false)} /> : null}
      {merging === null ? null : (
        <MergeDialog from={merging.from} into={merging.into} onClose={() => setMerging(null)} />
      )}
    </div>
  )
}

function kindOptions(counts: readonly { kind: CatalogueKind; entries: number; alike: number }[]) {
  return (Object.keys(catalogueKinds) as CatalogueKind[]).map((kind) => {
    const count = counts.find((one) => one.kind === kind)
    return {
      value: kind,
      label: `${catalogueKinds[kind].several}${count === undefined ? '' : ` ${writeCount(count.entries)}`}`,
    }
  })
}

/** Pairs that may be one thing, each with a way to make it one. */
function Alike({
  pairs,
  rows,
  onMerge,
}: {
  pairs: readonly LikeNames[]
  rows: readonly CatalogueRow[]
  onMerge(merge: { from: CatalogueChoice; into: number }): void
}) {
  const byId = new Map(rows.map((row) => [row.entryId, row]))
  const known = pairs.flatMap((pair) => {
    const [one, other] = [byId.get(pair.entryId), byId.get(pair.otherId)]
    return one === undefined || other === undefined ? [] : [{ ...pair, one, other }]
  })
  if (known.length === 0) return null
  return (
    <section className="catalogue-alike" aria-labelledby="alike-title">
      <h2 id="alike-title">May be one thing</h2>
      <ul>
        {known.slice(0, 20).map(({ one, other, differ }) => (
          <li key={`${one.entryId} ${other.entryId}`}>
            <span>
              <strong>{one.fields.name}</strong> and <strong>{other.fields.name}</strong>: {alikeWords(differ)}
            </span>
            <button
              type="button"
              className="button button-small"
              aria-label={`Merge ${other.fields.name} and ${one.fields.name}`}
              onClick={() => onMerge(rarerInto(one, other))}
            >
              Merge …
            </button>
          </li>
        ))}
      </ul>
    </section>
  )
}

/** What fewer specimens name is proposed to count as the other. */
function rarerInto(one: CatalogueRow, other: CatalogueRow): { from: CatalogueChoice; into: number } {
  const [from, into] = (one.specimens ?? 0) < (other.specimens ?? 0) ? [one, other] : [other, one]
  return { from, into: into.entryId }
}

function EntryTable({ rows }: { rows: readonly CatalogueRow[] }) {
  return (
    <table className="data-table">
      <thead>
        <tr>
          <th scope="col">Name</th>
          <th scope="col">Details</th>
          <th scope="col">Notes</th>
          <th scope="col" className="numeric">
            Specimens
          </th>
        </tr>
      </thead>
      <tbody>
        {rows.map(({ entryId, fields, specimens }) => (
          <tr key={entryId}>
            <th scope="row" className="catalogue-name">
              <a href={hashOf({ page: 'catalogue-entry', entryId })}>{fields.name}</a>
            </th>
            <td>{entryDetail(fields) ?? ''}</td>
            <td className="catalogue-notes">{fields.notes}</td>
            <td className="numeric">{specimens === null ? '–' : writeCount(specimens)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  )
}
