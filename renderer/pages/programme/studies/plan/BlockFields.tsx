import { areaQuestion } from '#words/specimens/plausibleWords.ts'
import { useQuantities } from '../../../../host/useQuantities.ts'
import { CatalogueField } from '../../../../parts/catalogue/CatalogueField.tsx'
import { sizesOf } from '../../../../parts/forms/overlapSizes.ts'
import type { TypedForm } from '../../../../parts/forms/useTypedTexts.ts'
import { Field, SelectField } from '../../../../widgets/Field.tsx'
import { BoardFields } from './BoardFields.tsx'
import type { StudyErrors, StudyTexts } from './studyForm.ts'

type TextKey = { [Key in keyof StudyTexts]: StudyTexts[Key] extends string ? Key : never }[keyof StudyTexts]
type Parts = { form: TypedForm<StudyTexts>; errors: StudyErrors }

const binding =
  ({ form: { shown, onTexts }, errors }: Parts) =>
  (key: TextKey) => ({
    value: shown[key],
    error: errors[key] ?? null,
    onChange: (event: { currentTarget: { value: string } }) => onTexts({ ...shown, [key]: event.currentTarget.value }),
  })

/** How many blocks, and when. */
export function BlockFields(parts: Parts) {
  const bind = binding(parts)
  const { adhesives } = parts.form.shown
  return (
    <fieldset className="study-fields">
      <legend>Blocks and pulls</legend>
      <div className="field-triple">
        <Field label="Blocks a cell" required inputMode="numeric" {...bind('blocksPerCell')} />
        <Field label="Spares a series" inputMode="numeric" {...bind('sparesPerSeries')} />
        <SelectField label="Reference adhesive" {...bind('referenceAdhesive')}>
          <option value="">none</option>
          {adhesives.map((name) => (
            <option key={name}>{name}</option>
          ))}
        </SelectField>
        <Field label="Glued on" type="date" {...bind('startOn')} hint="When it is to be; empty: not decided." />
        <Field label="Days a pull may be early or late" unit="days" inputMode="numeric" {...bind('windowDays')} />
        <Field label="Adhesive a block" unit="g" {...bind('adhesiveGPerBlock')} />
      </div>
    </fieldset>
  )
}

/** What a block is made of, and which boards it is cut from. */
export function WoodFields(parts: Parts) {
  const quantities = useQuantities()
  const { length, area } = quantities
  const bind = binding(parts)
  const { shown, readable, onTexts } = parts.form
  return (
    <fieldset className="study-fields">
      <legend>Wood and bond</legend>
      <div className="field-triple">
        <Field label="Overlap length" unit={length.unit} {...bind('overlapLengthMm')} />
        <Field label="Overlap width" unit={length.unit} {...bind('overlapWidthMm')} />
        <Field
          label="Bonded area"
          unit={area.unit}
          {...bind('areaMm2')}
          question={areaQuestion(sizesOf(readable, quantities), area)}
          hint="Empty: length times width."
        />
        <Field label="Length of a piece" unit={length.unit} {...bind('pieceLengthMm')} />
        <Field label="Width of a piece" unit={length.unit} {...bind('pieceWidthMm')} />
        <Field label="Thickness of a piece" unit={length.unit} {...bind('pieceThicknessMm')} />
      </div>
      <CatalogueField
        kind="wood"
        label="Wood"
        value={shown.wood}
        error={parts.errors.wood ?? null}
        placeholder="beech"
        onValue={(wood) => onTexts({ ...shown, wood })}
      />
      <BoardFields
        boards={shown.boards}
        wood={shown.wood}
        error={parts.errors.boards ?? null}
        onBoards={(boards) => onTexts({ ...shown, boards })}
      />
    </fieldset>
  )
}
