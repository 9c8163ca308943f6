import { useAnswer } from '../../../host/useAnswer.ts'
import { Choice } from '../../../widgets/Choice.tsx'
import { Field, SelectField } from '../../../widgets/Field.tsx'
import { choiceOf, type LabelDraft } from './labelDraft.ts'

/** Which labels: all of a study, or running numbers. */
export function LabelChoiceFields({
  draft,
  onChange,
}: {
  draft: LabelDraft
  onChange(next: Partial<LabelDraft>): void
}) {
  const studies = useAnswer('studies.list', {}).value?.rows ?? []
  const numbers = (['first', 'last'] as const).map((key) => (
    <Field
      key={key}
      label={key === 'first' ? 'First number, without check digit' : 'Last number'}
      inputMode="numeric"
      value={draft[key]}
      onChange={(event) => onChange({ [key]: event.currentTarget.value })}
    />
  ))
  const isWrong = draft.of === 'numbers' && draft.first !== '' && draft.last !== '' && choiceOf(draft) === null
  return (
    <fieldset className="labels-fieldset">
      <legend>Which labels</legend>
      <Choice
        label="Labels of"
        labelHidden
        options={[
          { value: 'study', label: 'A study' },
          { value: 'numbers', label: 'Numbers' },
        ]}
        value={draft.of}
        onChange={(of) => onChange({ of })}
      />
      {draft.of === 'study' ? (
        <SelectField
          label="Study"
          value={draft.studyId ?? ''}
          onChange={(event) => {
            const studyId = Number(event.currentTarget.value)
            onChange({ studyId: studyId === 0 ? null : studyId })
          }}
        >
          <option value="">Choose a study</option>
          {studies.map(({ studyId, fields }) => (
            <option key={studyId} value={studyId}>
              {fields.title}
            </option>
          ))}
        </SelectField>
      ) : (
        numbers
      )}
      {isWrong ? <p className="field-error">The last number must not be smaller than the first.</p> : null}
    </fieldset>
  )
}
