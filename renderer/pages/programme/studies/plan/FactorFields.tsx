import { useState } from 'react'
import { agesByRule } from '#domain/programme/calendar/agesByRule.ts'
import { nameTooLong } from '#words/programme/catalogueWords.ts'
import { readQuantity } from '#words/units/typedQuantity.ts'
import { useQuantities } from '../../../../host/useQuantities.ts'
import { CatalogueListField } from '../../../../parts/catalogue/CatalogueListField.tsx'
import type { TypedForm } from '../../../../parts/forms/useTypedTexts.ts'
import { Field } from '../../../../widgets/Field.tsx'
import { ListField } from '../../../../widgets/ListField.tsx'
import { agesText, openForNextAge, readAges } from './ageText.ts'
import { isListed, type StudyErrors, type StudyTexts } from './studyForm.ts'

type ListKey = 'adhesives' | 'jointTypes' | 'exposures'

/** What is compared: the levels of each factor, and the ages. */
export function FactorFields({ form, errors }: { form: TypedForm<StudyTexts>; errors: StudyErrors }) {
  const { shown, onTexts } = form
  const list = (key: ListKey) => ({
    values: shown[key],
    error: errors[key] ?? null,
    onAdd(texts: readonly string[]) {
      const twice = texts.find((one, index) => shown[key].includes(one) || texts.indexOf(one) < index)
      if (twice !== undefined) return isListed(twice)
      const long = texts.find((one) => one.length > 200)
      if (long !== undefined) return nameTooLong
      onTexts({ ...shown, [key]: [...shown[key], ...texts] })
      return null
    },
    onRemove: (index: number) => onTexts({ ...shown, [key]: shown[key].toSpliced(index, 1) }),
  })
  return (
    <fieldset className="study-fields">
      <legend>What is compared</legend>
      <CatalogueListField
        kind="adhesive"
        label="Adhesives"
        required
        {...list('adhesives')}
        hint="Enter after each name; several at once with semicolons between."
      />
      <CatalogueListField
        kind="exposure"
        label="Exposures"
        {...list('exposures')}
        placeholder="loft, then Enter, bilge …"
      />
      <div className="field-pair">
        <CatalogueListField
          kind="joint-type"
          label="Joint types"
          {...list('jointTypes')}
          placeholder="long grain to long grain"
        />
        <GapList form={form} error={errors.gapsMm ?? null} />
      </div>
      <AgeFields form={form} error={errors.ages ?? null} />
    </fieldset>
  )
}

function GapList({ form: { shown, onTexts }, error }: { form: TypedForm<StudyTexts>; error: string | null }) {
  const { length } = useQuantities()
  return (
    <ListField
      label={`Bond line gaps, ${length.unit}`}
      values={shown.gapsMm.map((gap) => length.text(gap))}
      placeholder="0: a tight joint"
      error={error}
      onAdd={(texts) => {
        const gapsMm = [...shown.gapsMm]
        for (const text of texts) {
          const read = readQuantity(text, length, `the gap in ${length.unit}`)
          if ('error' in read) return read.error
          if (read.stored === null || read.stored < 0) return 'A gap is 0 or more.'
          if (gapsMm.includes(read.stored)) return isListed(length.text(read.stored))
          gapsMm.push(read.stored)
        }
        onTexts({ ...shown, gapsMm })
        return null
      }}
      onRemove={(index) => onTexts({ ...shown, gapsMm: shown.gapsMm.toSpliced(index, 1) })}
    />
  )
}

function AgeFields({ form: { shown, onTexts }, error }: { form: TypedForm<StudyTexts>; error: string | null }) {
  return (
    <>
      <Field
        label="Ages, in months"
        required
        value={shown.ages}
        error={error}
        question={readAges(shown.ages).question}
        hint="Enter after each age; 0 is a pull as soon as the bond has cured, and 2 years is understood too."
        onKeyDown={(event) => {
          const next = event.key === 'Enter' ? openForNextAge(shown.ages) : null
          if (next === null) return
          event.preventDefault()
          onTexts({ ...shown, ages: next })
        }}
        onChange={(event) => onTexts({ ...shown, ages: event.currentTarget.value })}
      />
      <AgeRule onAges={(ages) => onTexts({ ...shown, ages: agesText(ages) })} />
    </>
  )
}

type Rule = Record<'firstStep' | 'firstYears' | 'thenStep' | 'thenYears', string>

/** Ages by a rule: at once, so often for some years, then so often to the end. */
function AgeRule({ onAges }: { onAges(agesMonths: number[]): void }) {
  const [rule, setRule] = useState<Rule>({ firstStep: '6', firstYears: '3', thenStep: '12', thenYears: '30' })
  const ages = agesOf(rule)
  const part = (key: keyof Rule, name: string) => (
    <input
      aria-label={name}
      data-enter=""
      inputMode="numeric"
      value={rule[key]}
      maxLength={4}
      onChange={(event) => setRule({ ...rule, [key]: event.currentTarget.value })}
      onKeyDown={(event) => {
        if (event.key !== 'Enter' || ages === null) return
        event.preventDefault()
        onAges(ages)
      }}
    />
  )
  return (
    <div className="age-rule">
      <span>
        At once, every {part('firstStep', 'Months between the first ages')} months for{' '}
        {part('firstYears', 'Years of the first ages')} years, then every{' '}
        {part('thenStep', 'Months between the later ages')} months to {part('thenYears', 'Years to the last age')} years
      </span>
      <button
        type="button"
        className="button button-small"
        aria-disabled={ages === null}
        onClick={() => ages !== null && onAges(ages)}
      >
        {ages === null ? 'No such ages' : `Use these ${ages.length} ages`}
      </button>
    </div>
  )
}

/** null: the numbers make no rule. */
function agesOf({ firstStep, firstYears, thenStep, thenYears }: Rule): number[] | null {
  const [step, until, later, end] = [firstStep, firstYears, thenStep, thenYears].map((text) =>
    /^\d{1,4}$/.test(text.trim()) ? Number(text) : Number.NaN,
  )
  const stretches = [
    { everyMonths: step!, untilMonths: 12 * until! },
    { everyMonths: later!, untilMonths: 12 * end! },
  ].filter(({ untilMonths }) => untilMonths !== 0)
  try {
    const ages = agesByRule({ atOnce: true, stretches })
    return ages.length <= 200 && ages.at(-1)! <= 1200 ? ages : null
  } catch {
    return null
  }
}
