import { type ReactNode, useCallback, useDeferredValue, useRef, useState } from 'react'
import type { TroubleMessage } from '#contract/errors.ts'
import type { StudyFields } from '#contract/programme/study.ts'
import { useQuantities } from '../../../../host/useQuantities.ts'
import { untouched, useTypedTexts } from '../../../../parts/forms/useTypedTexts.ts'
import { Field, TextField } from '../../../../widgets/Field.tsx'
import { Form } from '../../../../widgets/forms/Form.tsx'
import { goOnWithEnter } from '../../../../widgets/forms/goOnWithEnter.ts'
import { Notice } from '../../../../widgets/Notice.tsx'
import { BlockFields, WoodFields } from './BlockFields.tsx'
import { FactorFields } from './FactorFields.tsx'
import { GroupsTable } from './GroupsTable.tsx'
import { PlanPanel } from './PlanPanel.tsx'
import { type KeptOfStudy, readStudy, type StudyTexts, studyUnits } from './studyForm.ts'
import { TotalsPanel } from './TotalsPanel.tsx'
import './studyForm.css'

/** A study being planned: its fields, and beside them what it needs and what it can show. */
export function StudyForm({
  begins,
  kept,
  trouble,
  onDismiss,
  onFields,
  children,
}: {
  begins: StudyTexts
  kept: KeptOfStudy
  trouble: TroubleMessage | null
  onDismiss(): void
  /** Resolves with true when the study is kept. null: something is wrong, and is shown. */
  onFields(fields: StudyFields | null): Promise<boolean>
  /** What ends the form: who, why, and the buttons. */
  children: ReactNode
}) {
  const quantities = useQuantities()
  const form = useTypedTexts(() => untouched(begins), studyUnits)
  const [asked, setAsked] = useState(false)
  const read = readStudy(form.readable, quantities, kept)
  const plan = useDeferredValue(read.preview)
  const { title, question, ...others } = read.errors
  // What is missing is said after the person wanted to go on; what is wrong at once
  const empty = (key: keyof StudyTexts) => form.shown[key].length === 0
  const errors = asked
    ? others
    : Object.fromEntries(Object.entries(others).filter(([key]) => !empty(key as keyof StudyTexts)))
  const latest = useRef(form)
  latest.current = form
  const onLeftOut = useCallback((leftOut: StudyFields['leftOut']) => {
    latest.current.onTexts({ ...latest.current.shown, leftOut })
  }, [])

  async function submit(): Promise<boolean> {
    setAsked(true)
    return onFields(read.fields)
  }

  const bind = (key: 'title' | 'question') => ({
    value: form.shown[key],
    error: asked ? (read.errors[key] ?? null) : null,
    onChange: (event: { currentTarget: { value: string } }) =>
      form.onTexts({ ...form.shown, [key]: event.currentTarget.value }),
  })
  return (
    <Form onSubmit={submit} className="form study-form">
      {/* biome-ignore lint/a11y/noStaticElementInteractions: Enter goes on to the next field, so that no half-filled plan is kept */}
      <div className="study-columns" onKeyDown={goOnWithEnter}>
        <div className="study-typed">
          <Field label="Title" required {...bind('title')} maxLength={200} />
          <TextField label="The question, in words" {...bind('question')} maxLength={4000} />
          <FactorFields form={form} errors={errors} />
          <BlockFields form={form} errors={errors} />
          <WoodFields form={form} errors={errors} />
        </div>
        <div className="study-seen">
          <TotalsPanel plan={plan} />
          <PlanPanel form={form} errors={errors} plan={plan} />
        </div>
      </div>
      {plan === null ? null : <GroupsTable plan={plan} onLeftOut={onLeftOut} />}
      {/* Whoever looks whether a form was changed sees what was left out */}
      <input type="hidden" value={JSON.stringify(form.shown.leftOut)} />
      <Notice trouble={trouble} onDismiss={onDismiss} />
      {children}
    </Form>
  )
}
