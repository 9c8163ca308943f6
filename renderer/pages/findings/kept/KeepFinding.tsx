import { useState } from 'react'
import type { FindingsSettings } from '#contract/findings/keptFinding.ts'
import { useAction } from '../../../host/useAction.ts'
import { useAnswer } from '../../../host/useAnswer.ts'
import { SignatureDialog } from '../../../parts/decisions/SignatureDialog.tsx'
import { Field, SelectField } from '../../../widgets/Field.tsx'

/** Keeps the answer under a name, with how it was asked and what it rests on. */
export function KeepFinding({ settings, said }: { settings: FindingsSettings; said: readonly string[] }) {
  const [asking, setAsking] = useState(false)
  return (
    <div className="findings-keep screen-only">
      <button type="button" className="button" onClick={() => setAsking(true)}>
        Keep this finding
      </button>
      {asking ? <KeepDialog settings={settings} said={said} onClose={() => setAsking(false)} /> : null}
    </div>
  )
}

function KeepDialog({
  settings,
  said,
  onClose,
}: {
  settings: FindingsSettings
  said: readonly string[]
  onClose(): void
}) {
  const keep = useAction('findings.keep')
  const kept = useAnswer('findings.kept', {}).value?.rows ?? []
  const [over, setOver] = useState('')
  const [name, setName] = useState('')
  const [asked, setAsked] = useState(false)
  return (
    <SignatureDialog
      title="Keep this finding"
      explains="Its settings, its sentences and the results it rests on are kept; it says by itself when they change."
      button="Keep"
      who="required"
      why="optional"
      pending={keep.pending}
      error={keep.error}
      onSign={async (signature) => {
        setAsked(true)
        if (signature === null || name.trim() === '') return false
        const keptFindingId = over === '' ? null : Number(over)
        return (await keep.run({ keptFindingId, name: name.trim(), settings, said: [...said], ...signature })) !== null
      }}
      onClose={onClose}
    >
      {kept.length === 0 ? null : (
        <SelectField
          label="As"
          value={over}
          onChange={(event) => {
            const chosen = event.currentTarget.value
            setOver(chosen)
            setName(kept.find(({ keptFindingId }) => String(keptFindingId) === chosen)?.name ?? '')
          }}
        >
          <option value="">a new finding</option>
          {kept.map((one) => (
            <option key={one.keptFindingId} value={one.keptFindingId}>
              a newer version of {one.name}
            </option>
          ))}
        </SelectField>
      )}
      <Field
        label="Name"
        data-first-focus=""
        required
        maxLength={200}
        value={name}
        error={asked && name.trim() === '' ? 'Give it a name.' : null}
        onChange={(event) => setName(event.currentTarget.value)}
      />
    </SignatureDialog>
  )
}
