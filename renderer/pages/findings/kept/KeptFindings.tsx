import { useState } from 'react'
import type { FindingsSettings, KeptBlock, KeptFindingRow } from '#contract/findings/keptFinding.ts'
import {
  changedBlockWords,
  changesWords,
  keptBlockWords,
  keptSummary,
  keptWords,
  standsWords,
} from '#words/findings/keptWords.ts'
import { unreadableTrouble } from '#words/keeping/unreadableWords.ts'
import { useAction } from '../../../host/useAction.ts'
import { useAnswer } from '../../../host/useAnswer.ts'
import { useQuantities } from '../../../host/useQuantities.ts'
import { SignatureDialog } from '../../../parts/decisions/SignatureDialog.tsx'
import { hashOf } from '../../../routes/route.ts'
import { Disclosure } from '../../../widgets/Disclosure.tsx'
import { Notice } from '../../../widgets/Notice.tsx'
import './kept.css'

/** Findings that were kept, each with what changed since; nothing where there is none. */
export function KeptFindings({ onOpen }: { onOpen(settings: FindingsSettings): void }) {
  const { value, error } = useAnswer('findings.kept', {})
  const [leaving, setLeaving] = useState<KeptFindingRow | null>(null)
  const rows = value?.rows ?? []
  const trouble = error ?? unreadableTrouble(value?.unreadable)
  if (rows.length === 0) return <Notice trouble={trouble} />
  return (
    <section className="kept-findings" aria-label="Kept findings">
      <Notice trouble={trouble} />
      <Disclosure summary={keptSummary(rows)}>
        <ul>
          {rows.map((row) => (
            <li key={row.keptFindingId} className="kept-finding">
              <p className="kept-head">
                <button type="button" className="button button-small" onClick={() => onOpen(row.settings)}>
                  Open {row.name}
                </button>
                <span className="quiet">
                  {keptWords(row)}, data {row.dataSha256.slice(0, 16)}
                </span>
                <button type="button" className="button button-quiet button-small" onClick={() => setLeaving(row)}>
                  Take {row.name} off the list
                </button>
              </p>
              <Disclosure summary={standsWords(row)} data-stale={row.isStale ? '' : undefined}>
                <p className="quiet">Then it said:</p>
                {row.said.map((sentence) => (
                  <p key={sentence} className="prose">
                    {sentence}
                  </p>
                ))}
                {row.isStale ? <Changes keptFindingId={row.keptFindingId} /> : null}
              </Disclosure>
            </li>
          ))}
        </ul>
      </Disclosure>
      {leaving === null ? null : <LeaveDialog row={leaving} onClose={() => setLeaving(null)} />}
    </section>
  )
}

/** More of a kind nobody reads one by one. */
const mostListed = 50

/** Which results came, went and changed. */
function Changes({ keptFindingId }: { keptFindingId: number }) {
  const { strength } = useQuantities()
  const { value, error } = useAnswer('findings.changes', { keptFindingId })
  if (value === null) return <Notice trouble={error} />
  const { came, went, changed } = value
  return (
    <>
      <p className="quiet">{changesWords(value)}</p>
      <ul className="kept-changes">
        {came.slice(0, mostListed).map((block) => (
          <ChangedBlock key={keyOf(block)} block={block} words={`came: ${keptBlockWords(block, strength)}`} />
        ))}
        {went.slice(0, mostListed).map((block) => (
          <ChangedBlock key={keyOf(block)} block={block} words={`went: ${keptBlockWords(block, strength)}`} />
        ))}
        {changed.slice(0, mostListed).map(({ before, now }) => (
          <ChangedBlock key={keyOf(now)} block={now} words={`changed: ${changedBlockWords(before, now, strength)}`} />
        ))}
        {[came, went, changed].some(({ length }) => length > mostListed) ? <li>and more of the kind</li> : null}
      </ul>
    </>
  )
}

const keyOf = ({ specimenId, breakId }: KeptBlock) => `${specimenId} ${breakId}`

function ChangedBlock({ block: { specimenId, number }, words }: { block: KeptBlock; words: string }) {
  return (
    <li className="kept-change">
      <a href={hashOf({ page: 'specimen', specimenId })}>{number}</a>
      <span>{words}</span>
    </li>
  )
}

function LeaveDialog({ row, onClose }: { row: KeptFindingRow; onClose(): void }) {
  const unlist = useAction('findings.unlist')
  return (
    <SignatureDialog
      title={`Take ${row.name} off the list`}
      explains="What was kept of it stays in the archive."
      button="Take off the list"
      pending={unlist.pending}
      error={unlist.error}
      onSign={async (signature) =>
        signature !== null && (await unlist.run({ keptFindingId: row.keptFindingId, ...signature })) !== null
      }
      onClose={onClose}
    />
  )
}
