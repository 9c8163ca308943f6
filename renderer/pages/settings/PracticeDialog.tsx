import { type FormEvent, useState } from 'react'
import type { TestPractice } from '#contract/settings/practice.ts'
import { limitKeys, limitWords } from '#words/settings/practiceWords.ts'
import { useQuantities } from '../../host/useQuantities.ts'
import { Dialog } from '../../widgets/dialogs/Dialog.tsx'
import { Field, TextField } from '../../widgets/Field.tsx'
import { type PracticeTexts, practiceTexts, readPractice } from './practiceForm.ts'

/** Adds a test practice, or changes one. Limits that are left empty are open. */
export function PracticeDialog({
  practice,
  taken,
  pending,
  onSave,
  onClose,
}: {
  practice: TestPractice | null
  /** Names of the other practices. */
  taken: readonly string[]
  pending: boolean
  onSave(practice: TestPractice): void
  onClose(): void
}) {
  const quantities = useQuantities()
  const [texts, setTexts] = useState(() => practiceTexts(practice, quantities))
  const [asked, setAsked] = useState(false)
  const read = readPractice(texts, quantities, taken)
  const field = (key: keyof PracticeTexts) => ({
    value: texts[key],
    onChange: (event: { currentTarget: { value: string } }) => {
      const { value } = event.currentTarget
      setTexts((before) => ({ ...before, [key]: value }))
    },
    error: asked ? (read.errors?.[key] ?? null) : null,
  })

  function submit(event: FormEvent): void {
    event.preventDefault()
    setAsked(true)
    if (read.practice !== null) onSave(read.practice)
  }

  return (
    <Dialog title={practice === null ? 'Add a test practice' : `Change “${practice.name}”`} onClose={onClose}>
      <form className="form" noValidate onSubmit={submit}>
        <Field label="Name" required data-first-focus="" maxLength={200} {...field('name')} />
        <TextField
          label="Source, such as the clause of a standard"
          required
          maxLength={500}
          hint="Shown with every break. If there is none, write “common practice, no source”."
          {...field('source')}
        />
        {limitKeys.map((key) => {
          const { name, unit } = limitWords(key, quantities)
          return (
            <fieldset key={key} className="field-pair">
              <legend className="visually-hidden">{name}</legend>
              <Field label={`${name}, at least`} unit={unit} inputMode="decimal" {...field(`${key}.least`)} />
              <Field label={`${name}, at most`} unit={unit} inputMode="decimal" {...field(`${key}.most`)} />
            </fieldset>
          )
        })}
        <Field
          label="Sampling bound, at most"
          unit="% of the peak"
          inputMode="decimal"
          {...field('samplingBoundPercent')}
        />
        <div className="dialog-buttons">
          <button type="button" className="button" onClick={onClose}>
            Cancel
          </button>
          <button type="submit" className="button button-primary" disabled={pending}>
            Save
          </button>
        </div>
      </form>
    </Dialog>
  )
}
