import { useState } from 'react'
import type { ClimateImportSummary } from '#contract/findings/climate.ts'
import { storeName } from '#words/findings/climate/climateWords.ts'
import { simulatedMark } from '#words/keeping/demoWords.ts'
import { writeCount } from '#words/units/numbers.ts'
import { dayWords, utcDayWords } from '#words/units/times.ts'
import { useAction } from '../../../host/useAction.ts'
import { SignatureDialog } from '../../../parts/decisions/SignatureDialog.tsx'

/** Every logger file that was brought in, and a person's word on it. */
export function ClimateImports({ imports }: { imports: readonly ClimateImportSummary[] }) {
  const [deciding, setDeciding] = useState<ClimateImportSummary | null>(null)
  if (imports.length === 0) return null
  return (
    <section className="climate-imports" aria-label="Logger files">
      <h2>Logger files</h2>
      <table className="data-table">
        <thead>
          <tr>
            <th scope="col">File</th>
            <th scope="col">Store</th>
            <th scope="col">Time</th>
            <th scope="col" className="numeric">
              Readings
            </th>
            <th scope="col" className="numeric">
              Rows rejected
            </th>
            <th scope="col">Brought in</th>
            <th scope="col">
              <span className="visually-hidden">Decide</span>
            </th>
          </tr>
        </thead>
        <tbody>
          {imports.map((one) => (
            <tr key={one.climateImportId}>
              <th scope="row">
                {one.fileName}
                {one.simulated ? ` (${simulatedMark})` : ''}
              </th>
              <td>{storeName({ kind: one.storeKind, name: one.store })}</td>
              <td>
                {utcDayWords(one.fromS)} to {utcDayWords(one.toS)}
              </td>
              <td className="numeric">{writeCount(one.readings)}</td>
              <td className="numeric">{writeCount(one.rejected)}</td>
              <td>
                {dayWords(one.recordedAt)}
                {one.by === '' ? '' : ` by ${one.by}`}
                {one.setAside === null ? null : (
                  <span className="quiet">
                    , set aside{one.setAside.by === '' ? '' : ` by ${one.setAside.by}`}: {one.setAside.reason}
                  </span>
                )}
              </td>
              <td className="data-table-buttons">
                <button type="button" className="button" onClick={() => setDeciding(one)}>
                  {one.setAside === null ? 'Set aside' : 'Use again'}
                  <span className="visually-hidden"> {one.fileName}</span>
                </button>
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      {deciding === null ? null : <DecideDialog made={deciding} onClose={() => setDeciding(null)} />}
    </section>
  )
}

function DecideDialog({ made, onClose }: { made: ClimateImportSummary; onClose(): void }) {
  const decide = useAction('climate.decide')
  const kind = made.setAside === null ? 'set-aside' : 'taken-back'
  return (
    <SignatureDialog
      title={kind === 'set-aside' ? 'Set a logger file aside' : 'Use a logger file again'}
      explains={
        kind === 'set-aside'
          ? `The readings of ${made.fileName} stay in the archive and count no longer.`
          : `The readings of ${made.fileName} count again.`
      }
      button={kind === 'set-aside' ? 'Set aside' : 'Use again'}
      pending={decide.pending}
      error={decide.error}
      onSign={async (signature) =>
        signature !== null && (await decide.run({ climateImportId: made.climateImportId, kind, ...signature })) !== null
      }
      onClose={onClose}
    />
  )
}
