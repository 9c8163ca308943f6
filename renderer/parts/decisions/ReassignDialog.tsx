import { useState } from 'react'
import type { BreakSummary } from '#contract/breaks/break.ts'
import type { SpecimenSummary } from '#contract/specimens/specimenRecord.ts'
import { specimenWords } from '#words/specimens/specimenWords.ts'
import { useAction } from '../../host/useAction.ts'
import { useAnswer } from '../../host/useAnswer.ts'
import { Field } from '../../widgets/Field.tsx'
import { SignatureDialog } from './SignatureDialog.tsx'

/** Moves a break to the specimen it really was made of, or to none. */
export function ReassignDialog({ summary, onClose }: { summary: BreakSummary; onClose(): void }) {
  const reassign = useAction('breaks.reassign')
  const [text, setText] = useState('')
  const [target, setTarget] = useState<SpecimenSummary | 'none' | null>(null)
  const [asked, setAsked] = useState(false)
  const found = useAnswer('specimens.list', { text, limit: 6 })
  const chosen = target === 'none' ? null : target
  const others = (found.value?.rows ?? []).filter(({ specimenId }) => specimenId !== summary.specimenId)
  const isChosen = ({ specimenId }: SpecimenSummary) => specimenId === chosen?.specimenId
  // The one that is chosen stays in sight whatever is looked for next
  const rows = chosen === null || others.some(isChosen) ? others : [chosen, ...others]
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
        const specimenId = chosen?.specimenId ?? null
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
        {rows.map((row) => (
          <label key={row.specimenId}>
            <input type="radio" name="specimen" checked={isChosen(row)} onChange={() => setTarget(row)} />
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
