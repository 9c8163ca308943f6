import { useState } from 'react'
import type { OverallSettings } from '#contract/findings/keptFinding.ts'
import type { FindingsGroup } from '#contract/findings/procedures.ts'
import { countOf, ofWords } from '#words/units/counts.ts'
import { useAnswer } from '../../../host/useAnswer.ts'
import { useQuantities } from '../../../host/useQuantities.ts'
import { Field, SelectField } from '../../../widgets/Field.tsx'
import { typedFactor } from '../findingsQuestions.ts'
import { adhesivesOf, type NamedCondition, namedConditions } from './overallConditions.ts'
import './overall.css'

type Change = (change: Partial<OverallSettings>) => void

/** Beside which adhesive, of which adhesives, and in which conditions with which weights. */
export function OverallForm({
  overall,
  groups,
  onOverall,
}: {
  overall: OverallSettings
  groups: readonly FindingsGroup[]
  onOverall: Change
}) {
  const { length } = useQuantities()
  const adhesives = adhesivesOf(groups)
  return (
    <div className="overall-form">
      <div className="findings-picks">
        <SelectField
          label="Reference adhesive"
          value={overall.reference}
          onChange={(event) => onOverall({ reference: event.currentTarget.value })}
        >
          <option value="">choose one</option>
          {adhesives.map((one) => (
            <option key={one}>{one}</option>
          ))}
        </SelectField>
      </div>
      <Conditions all={namedConditions(groups, overall, length.text)} onOverall={onOverall} />
      <Adhesives overall={overall} all={adhesives} onOverall={onOverall} />
    </div>
  )
}

function Conditions({ all, onOverall }: { all: readonly NamedCondition[]; onOverall: Change }) {
  const weigh = (weightOf: (one: NamedCondition) => number) =>
    onOverall({
      conditions: all.map((one) => {
        const { jointType, bondLineGapMm, exposure } = one
        return { jointType, bondLineGapMm, exposure, weight: weightOf(one) }
      }),
    })
  const exposures = [...new Set(all.map(({ exposure }) => exposure))].filter((one) => one !== '')
  return (
    <fieldset className="overall-choice">
      <legend>Conditions: {ofWords(all.filter(({ weight }) => weight > 0).length, all.length)}</legend>
      <p className="overall-buttons">
        <button type="button" className="button button-small" onClick={() => onOverall({ conditions: null })}>
          All
        </button>
        {exposures.length < 2
          ? null
          : exposures.map((without) => (
              <button
                key={without}
                type="button"
                className="button button-small"
                onClick={() => weigh(({ exposure }) => (exposure === without ? 0 : 1))}
              >
                All but {without}
              </button>
            ))}
      </p>
      <div className="overall-weights">
        {all.map((one) => (
          <WeightField
            key={`${one.key} ${one.weight}`}
            condition={one}
            onWeight={(weight) => weigh((other) => (other.key === one.key ? weight : other.weight))}
          />
        ))}
      </div>
    </fieldset>
  )
}

/** The weight of one condition; it counts as soon as the field is left or Enter is pressed. */
function WeightField({ condition, onWeight }: { condition: NamedCondition; onWeight(weight: number): void }) {
  const [text, setText] = useState(String(condition.weight))
  const weight = typedFactor(text)
  const take = () => {
    if (weight !== null && weight !== condition.weight) onWeight(weight)
  }
  return (
    <Field
      label={`Weight of ${condition.name}`}
      value={text}
      error={weight === null ? 'Say a number of 0 or more; 0 leaves it out.' : null}
      onChange={(event) => setText(event.currentTarget.value)}
      onBlur={take}
      onKeyDown={(event) => {
        if (event.key === 'Enter') take()
      }}
    />
  )
}

function Adhesives({
  overall: { adhesives },
  all,
  onOverall,
}: {
  overall: OverallSettings
  all: readonly string[]
  onOverall: Change
}) {
  const choices = useAnswer('catalogue.choices', { kind: 'adhesive' }).value ?? []
  const classOf = new Map(
    choices.flatMap(({ fields }) => (fields.kind === 'adhesive' ? [[fields.name, fields.adhesiveClass] as const] : [])),
  )
  const classes = [...new Set(all.map((one) => classOf.get(one) ?? ''))].filter((one) => one !== '').sort()
  const chosen = adhesives ?? all
  return (
    <details className="overall-choice">
      <summary>
        Adhesives: {adhesives === null ? `all ${countOf(all.length, 'adhesive')}` : ofWords(chosen.length, all.length)}
      </summary>
      <p className="overall-buttons">
        <button type="button" className="button button-small" onClick={() => onOverall({ adhesives: null })}>
          All
        </button>
        {classes.map((one) => (
          <button
            key={one}
            type="button"
            className="button button-small"
            onClick={() => onOverall({ adhesives: all.filter((adhesive) => classOf.get(adhesive) === one) })}
          >
            Class {one}
          </button>
        ))}
      </p>
      <div className="overall-checks">
        {all.map((one) => (
          <label key={one} className="overall-check">
            <input
              type="checkbox"
              checked={chosen.includes(one)}
              onChange={(event) =>
                onOverall({
                  adhesives: all.filter((other) => (other === one ? event.target.checked : chosen.includes(other))),
                })
              }
            />
            {one}
          </label>
        ))}
      </div>
    </details>
  )
}
