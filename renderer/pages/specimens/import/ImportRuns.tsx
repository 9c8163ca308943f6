import { useState } from 'react'
import type { ImportRunSummary, TypedSetAsideCause } from '#contract/specimens/typedResult.ts'
import { importRunName, importUseWords } from '#words/specimens/import/outcomeWords.ts'
import { instantWords } from '#words/units/times.ts'
import { useAction } from '../../../host/useAction.ts'
import { SignatureDialog } from '../../../parts/decisions/SignatureDialog.tsx'
import { TypedAsideChoice } from '../TypedAsideChoice.tsx'

/** The files that were brought in, newest first; all results of one can be set aside, and taken back. */
export function ImportRuns({ runs }: { runs: readonly ImportRunSummary[] }) {
  const [deciding, setDeciding] = useState<{ run: ImportRunSummary; kind: Kind } | null>(null)
  if (runs.length === 0) return null
  return (
    <section aria-labelledby="runs-title">
      <h2 id="runs-title">Brought in before</h2>
      <table className="data-table">
        <thead>
          <tr>
            <th scope="col">File</th>
            <th scope="col">When</th>
            <th scope="col">By</th>
            <th scope="col">Results</th>
            <th scope="col">
              <span className="visually-hidden">Decide</span>
            </th>
          </tr>
        </thead>
        <tbody>
          {runs.map((run) => (
            <tr key={run.importRunId}>
              <th scope="row">
                <span title={`SHA-256 ${run.fileSha256}`}>{run.fileName}</span>
              </th>
              <td className="when">{instantWords(run.recordedAt)}</td>
              <td>{run.by}</td>
              <td>{importUseWords(run)}</td>
              <td className="data-table-buttons">
                {run.inUse === 0 ? null : <DecideButton run={run} kind="set-aside" onDecide={setDeciding} />}
                {run.inUse === run.results ? null : <DecideButton run={run} kind="taken-back" onDecide={setDeciding} />}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      {deciding === null ? null : <DecideDialog {...deciding} onClose={() => setDeciding(null)} />}
    </section>
  )
}

type Kind = 'set-aside' | 'taken-back'

const buttonWords: Readonly<Record<Kind, string>> = { 'set-aside': 'Set aside', 'taken-back': 'Count again' }

function DecideButton({
  run,
  kind,
  onDecide,
}: {
  run: ImportRunSummary
  kind: Kind
  onDecide(asked: { run: ImportRunSummary; kind: Kind }): void
}) {
  return (
    <button
      type="button"
      className="button"
      aria-label={`${buttonWords[kind]}: ${importRunName(run)}`}
      onClick={() => onDecide({ run, kind })}
    >
      {buttonWords[kind]}
    </button>
  )
}

/** Sets all results of an import aside, or lets them count again. */
function DecideDialog({ run, kind, onClose }: { run: ImportRunSummary; kind: Kind; onClose(): void }) {
  const decide = useAction('imports.decide')
  const [cause, setCause] = useState<TypedSetAsideCause>('other')
  const isAside = kind === 'set-aside'
  return (
    <SignatureDialog
      title={`${buttonWords[kind]}: ${run.fileName}`}
      explains={
        isAside
          ? 'None of its results counts any more. Nothing is deleted, and it can be taken back.'
          : 'All of its results count again, those too that were set aside one by one.'
      }
      button={buttonWords[kind]}
      pending={decide.pending}
      error={decide.error}
      onSign={async (signature) =>
        signature !== null &&
        (await decide.run({ importRunId: run.importRunId, kind, cause: isAside ? cause : null, ...signature })) !== null
      }
      onClose={onClose}
    >
      {isAside ? <TypedAsideChoice of="file" cause={cause} onCause={setCause} /> : null}
    </SignatureDialog>
  )
}
