import { useState } from 'react'
import type { BreakSummary } from '#contract/breaks/break.ts'
import { specimenWords } from '#words/specimens/specimenWords.ts'
import { useAction } from '../../host/useAction.ts'
import { useAnswer } from '../../host/useAnswer.ts'
import { Field } from '../../widgets/Field.tsx'
import { SignatureDialog } from './SignatureDialog.tsx'

/** Moves a break to the specimen it really was made of, or to none. */
export function ReassignDialog({ summary, onClose }: { summary: BreakSummary; onClose(): void }) {
  const reassign = useAction('breaks.reassign')
  const [text, setText] = useState('')
  const [target, setTarget] = useState<number | 'none' | null>(null)
  const [asked, setAsked] = useState(false)
  const found = useAnswer('specimens.list', { text, limit: 6 })
  return (
    <SignatureDialog
      title="Move this break to another specimen"
      button="Move"
      whyMissing="Give a reason; it is kept with the break."
      pending={reassign.pending}
      error={found.error ?? reassign.error}
      onSign={async (signature) => {
        setAsked(true)
        if (signature === null || target === null) return false
        const specimenId = target === 'none' ? null : target
        return (await reassign.run({ breakId: summary.breakId, specimenId, ...signature })) !== null
      }}
      onClose={onClose}
    >
      <Field
        label="Find the specimen"
        data-first-focus=""
        type="search"
        maxLength={1000}
        value={text}
        onChange={(event) => setText(event.currentTarget.value)}
        error={asked && target === null ? 'Choose a specimen below, or none.' : null}
      />
      <fieldset className="pick-list">
        <legend className="visually-hidden">Specimen</legend>
        {(found.value?.rows ?? [])
          .filter((row) => row.specimenId !== summary.specimenId)
          .map((row) => (
            <label key={row.specimenId}>
              <input
                type="radio"
                name="specimen"
                checked={target === row.specimenId}
                onChange={() => setTarget(row.specimenId)}
              />
              <strong>{row.fields.number}</strong> <span className="quiet">{specimenWords(row.fields)}</span>
            </label>
          ))}
        {summary.specimenId === null ? null : (
          <label>
            <input type="radio" name="specimen" checked={target === 'none'} onChange={() => setTarget('none')} />
            No specimen
          </label>
        )}
      </fieldset>
    </SignatureDialog>
  )
}
