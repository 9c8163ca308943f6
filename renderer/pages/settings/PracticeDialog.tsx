import { useState } from 'react'
import type { TestPractice } from '#contract/settings/practice.ts'
import { limitKeys, limitWords } from '#words/settings/practiceWords.ts'
import { useQuantities } from '../../host/useQuantities.ts'
import { untouched, useTypedTexts } from '../../parts/forms/useTypedTexts.ts'
import { CancelButton } from '../../widgets/dialogs/CancelButton.tsx'
import { Dialog } from '../../widgets/dialogs/Dialog.tsx'
import { Field, TextField } from '../../widgets/Field.tsx'
import { Form } from '../../widgets/forms/Form.tsx'
import { type PracticeTexts, practiceTexts, practiceUnits, readPractice } from './practiceForm.ts'

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
  /** Resolves with true when it is kept. */
  onSave(practice: TestPractice): Promise<boolean>
  onClose(): void
}) {
  const quantities = useQuantities()
  const texts = useTypedTexts(() => untouched(practiceTexts(practice)), practiceUnits)
  const [asked, setAsked] = useState(false)
  const read = readPractice(texts.readable, quantities, taken)
  const field = (key: keyof PracticeTexts) => ({
    value: texts.shown[key],
    onChange: (event: { currentTarget: { value: string } }) =>
      texts.onTexts({ ...texts.shown, [key]: event.currentTarget.value }),
    error: asked ? (read.errors?.[key] ?? null) : null,
  })

  function submit(): boolean | Promise<boolean> {
    setAsked(true)
    return read.practice !== null && onSave(read.practice)
  }

  return (
    <Dialog title={practice === null ? 'Add a test practice' : `Change “${practice.name}”`} onClose={onClose}>
      <Form onSubmit={submit}>
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
              <Field label={`${name}, at least`} unit={unit} {...field(`${key}.least`)} />
              <Field label={`${name}, at most`} unit={unit} {...field(`${key}.most`)} />
            </fieldset>
          )
        })}
        <Field label="Sampling bound, at most" unit="% of the peak" {...field('samplingBoundPercent')} />
        <div className="dialog-buttons">
          <CancelButton />
          <button type="submit" className="button button-primary" aria-disabled={pending}>
            Save
          </button>
        </div>
      </Form>
    </Dialog>
  )
}
