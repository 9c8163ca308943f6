import { useState } from 'react'
import { areaQuestion } from '#words/specimens/plausibleWords.ts'
import { useQuantities } from '../../../../host/useQuantities.ts'
import { CatalogueField } from '../../../../parts/catalogue/CatalogueField.tsx'
import { sizesOf } from '../../../../parts/forms/overlapSizes.ts'
import type { TypedForm } from '../../../../parts/forms/useTypedTexts.ts'
import { Field, SelectField, TextField } from '../../../../widgets/Field.tsx'
import { withMoreBoards } from './boardText.ts'
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
      <TextField
        label="Boards, one a line, and how many blocks each gives"
        rows={3}
        placeholder="plank 1: 60"
        {...bind('boards')}
        hint="Every adhesive is spread over the boards as evenly as they allow. Empty: blocks are not allocated to boards."
      />
      <MoreBoards
        onAdd={(name, count, blocks) =>
          onTexts({ ...shown, boards: withMoreBoards(shown.boards, name, count, blocks) })
        }
      />
    </fieldset>
  )
}

/** Adds many boards that are alike. */
function MoreBoards({ onAdd }: { onAdd(name: string, count: number, blocks: number): void }) {
  const [typed, setTyped] = useState({ count: '', name: 'board', blocks: '' })
  const whole = (text: string, most: number) =>
    /^[1-9]\d*$/.test(text.trim()) && Number(text) <= most ? Number(text) : null
  const [count, blocks] = [whole(typed.count, 1000), whole(typed.blocks, 100_000)]
  const ready = count !== null && blocks !== null && typed.name.trim() !== ''
  const add = () => ready && onAdd(typed.name.trim(), count, blocks)
  const part = (key: keyof typeof typed, name: string) => (
    <input
      aria-label={name}
      value={typed[key]}
      maxLength={60}
      onChange={(event) => setTyped({ ...typed, [key]: event.currentTarget.value })}
      onKeyDown={(event) => {
        if (event.key !== 'Enter' || !ready) return
        event.preventDefault()
        add()
      }}
    />
  )
  return (
    <div className="age-rule">
      <span>
        {part('count', 'How many boards to add')} boards named {part('name', 'Name of the boards to add')} 1, 2, … that
        give {part('blocks', 'Blocks that each board to add gives')} blocks each
      </span>
      <button type="button" className="button button-small" aria-disabled={!ready} onClick={add}>
        Add them
      </button>
    </div>
  )
}
