import { useState } from 'react'
import { type ImportMapping, importMapping, type NamedMapping } from '#contract/specimens/importMapping.ts'
import type { ImportRunSummary } from '#contract/specimens/typedResult.ts'
import { importRunName } from '#words/specimens/import/outcomeWords.ts'
import { usePreferences } from '../../../host/hostContext.ts'
import { useAction } from '../../../host/useAction.ts'
import { Field, SelectField } from '../../../widgets/Field.tsx'
import { Notice } from '../../../widgets/Notice.tsx'

/** More earlier imports are not offered. */
const mostRuns = 20

/** Takes a mapping that was kept under a name, or with an earlier import; and keeps the present one. */
export function KeptMappings({
  mapping,
  runs,
  onTake,
}: {
  mapping: ImportMapping
  runs: readonly ImportRunSummary[]
  /** null: the one that the headings propose. */
  onTake(mapping: ImportMapping | null): void
}) {
  const { importMappings } = usePreferences()
  const keep = useAction('preferences.set')
  const [name, setName] = useState('')
  const [taken, setTaken] = useState('')
  const ofRuns = runs.slice(0, mostRuns).flatMap((run): NamedMapping[] => {
    const read = importMapping.safeParse(run.mapping)
    return read.success ? [{ name: importRunName(run), mapping: read.data }] : []
  })
  const all = [...importMappings, ...ofRuns]
  const others = importMappings.filter((one) => one.name !== name.trim())
  const isTakenKept = taken !== '' && Number(taken) < importMappings.length

  async function keepIt(): Promise<void> {
    const named = { name: name.trim(), mapping }
    if (named.name !== '' && (await keep.run({ importMappings: [...others, named] })) !== null) {
      setName('')
      setTaken(String(others.length))
    }
  }

  return (
    <>
      <div className="import-options">
        {all.length === 0 ? null : (
          <SelectField
            label="Mapping"
            value={taken}
            onChange={(event) => {
              const at = event.currentTarget.value
              setTaken(at)
              onTake(at === '' ? null : all[Number(at)]!.mapping)
            }}
          >
            <option value="">as the headings propose</option>
            {all.map((one, at) => (
              <option key={`${at < importMappings.length} ${one.name}`} value={at}>
                {at < importMappings.length ? one.name : `as for ${one.name}`}
              </option>
            ))}
          </SelectField>
        )}
        <Field
          label="Keep this mapping as"
          value={name}
          maxLength={200}
          onChange={(event) => setName(event.currentTarget.value)}
          onKeyDown={(event) => {
            if (event.key === 'Enter') void keepIt()
          }}
        />
        <span className="import-buttons">
          <button
            type="button"
            className="button"
            aria-disabled={name.trim() === '' || keep.pending}
            onClick={() => void keepIt()}
          >
            {others.length < importMappings.length ? 'Replace' : 'Keep'}
          </button>
          {isTakenKept ? (
            <button
              type="button"
              className="button button-quiet"
              onClick={() => {
                setTaken('')
                void keep.run({ importMappings: importMappings.filter((_, at) => at !== Number(taken)) })
              }}
            >
              Forget “{importMappings[Number(taken)]?.name}”
            </button>
          ) : null}
        </span>
      </div>
      <Notice trouble={keep.error} onDismiss={keep.dismiss} />
    </>
  )
}
