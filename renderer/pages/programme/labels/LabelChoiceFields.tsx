import { mostLabels } from '#contract/programme/labelProcedures.ts'
import { countOf } from '#words/units/counts.ts'
import { writeCount } from '#words/units/numbers.ts'
import { useAnswer } from '../../../host/useAnswer.ts'
import { hashOf } from '../../../routes/route.ts'
import { Choice } from '../../../widgets/Choice.tsx'
import { Field, SelectField } from '../../../widgets/Field.tsx'
import { choiceOf, type LabelDraft } from './labelDraft.ts'

/** Which labels: all of a study, running numbers, or the specimens selected in their list. */
export function LabelChoiceFields({
  draft,
  selected,
  onChange,
}: {
  draft: LabelDraft
  /** The specimens that are selected in their list. */
  selected: readonly number[]
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
  const isWrong =
    draft.of === 'numbers' && draft.first !== '' && draft.last !== '' && choiceOf(draft, selected) === null
  return (
    <fieldset className="labels-fieldset">
      <legend>Which labels</legend>
      <Choice
        label="Labels of"
        labelHidden
        options={[
          { value: 'study', label: 'A study' },
          { value: 'numbers', label: 'Numbers' },
          ...(selected.length > 0 || draft.of === 'selected'
            ? [{ value: 'selected' as const, label: 'Selected' }]
            : []),
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
      ) : draft.of === 'numbers' ? (
        numbers
      ) : (
        <p>
          {selected.length === 0
            ? 'No specimen is selected.'
            : `${countOf(selected.length, 'specimen')} selected in the list, in the order in which they were selected.`}{' '}
          <a href={hashOf({ page: 'specimens' })}>Select others</a>
        </p>
      )}
      {draft.of === 'selected' && selected.length > mostLabels ? (
        <p className="field-error">{`${writeCount(mostLabels)} labels are printed at once at most: select fewer.`}</p>
      ) : null}
      {isWrong ? <p className="field-error">The last number must not be smaller than the first.</p> : null}
    </fieldset>
  )
}
