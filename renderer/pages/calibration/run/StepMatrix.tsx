import type { LoadingConditionsEntry } from '#contract/calibration/loading.ts'
import type { WeightEntry } from '#contract/calibration/weight.ts'
import { type StepWord, stepWords } from '#words/calibration/routine/stepWords.ts'
import { loadText } from '#words/calibration/weightWords.ts'
import { useQuantities } from '../../../host/useQuantities.ts'
import { proposeSteps } from '../plan/proposeSteps.ts'
import './stepMatrix.css'

/** Steps down, weights across: a crossing that is ticked hangs. The force of each step stands beside it as one ticks. */
export function StepMatrix({
  weights,
  steps,
  conditions,
  capacityN,
  error,
  onSteps,
}: {
  weights: readonly WeightEntry[]
  steps: readonly string[][]
  conditions: LoadingConditionsEntry | null
  capacityN: number | null
  error: string | null
  onSteps(steps: string[][]): void
}) {
  const { force } = useQuantities()
  const words = stepWords(steps, weights, conditions, capacityN, force)

  function toggle(step: number, name: string): void {
    onSteps(
      steps.map((names, index) => {
        if (index !== step) return names
        const next = names.includes(name) ? names.filter((one) => one !== name) : [...names, name]
        return weights.map((weight) => weight.name).filter((one) => next.includes(one))
      }),
    )
  }

  return (
    <>
      {steps.length === 0 ? null : (
        <div className="matrix-scroll">
          <table className="matrix">
            <thead>
              <tr>
                <th scope="col">Step</th>
                {weights.map((weight) => (
                  <th scope="col" key={weight.name} className="matrix-weight">
                    {weight.name}
                  </th>
                ))}
                <th scope="col" className="numeric">
                  Mass
                </th>
                <th scope="col" className="numeric">
                  Force
                </th>
                <th scope="col">
                  <span className="visually-hidden">Take away</span>
                </th>
              </tr>
            </thead>
            <tbody>
              {steps.map((names, index) => (
                <StepRow
                  key={index}
                  number={index + 1}
                  names={names}
                  weights={weights}
                  word={words[index]}
                  onToggle={(name) => toggle(index, name)}
                  onTakeAway={() => onSteps(steps.filter((_, other) => other !== index))}
                />
              ))}
            </tbody>
          </table>
        </div>
      )}
      {error === null ? null : (
        <p id="steps-error" className="field-error">
          {error}
        </p>
      )}
      <div className="matrix-buttons" data-wrong={error === null ? undefined : ''}>
        <button
          type="button"
          className="button"
          aria-describedby={error === null ? undefined : 'steps-error'}
          onClick={() => onSteps([...steps, []])}
        >
          Add a step
        </button>
        <button type="button" className="button" onClick={() => onSteps(proposeSteps(weights))}>
          {steps.length === 0 ? 'Suggest steps' : 'Suggest other steps'}
        </button>
        <p className="quiet">Zero is read before and after every run.</p>
      </div>
    </>
  )
}

function StepRow({
  number,
  names,
  weights,
  word,
  onToggle,
  onTakeAway,
}: {
  number: number
  names: readonly string[]
  weights: readonly WeightEntry[]
  word: StepWord | undefined
  onToggle(name: string): void
  onTakeAway(): void
}) {
  const { mass } = useQuantities()
  return (
    <tr data-wrong={word?.trouble ? '' : undefined}>
      <th scope="row">{number}</th>
      {weights.map((weight) => (
        <td key={weight.name} className="matrix-weight">
          <input
            type="checkbox"
            aria-label={`Step ${number}: ${weight.name}`}
            checked={names.includes(weight.name)}
            onChange={() => onToggle(weight.name)}
          />
        </td>
      ))}
      <td className="numeric">{mass.text(word?.massKg ?? null)}</td>
      <td className="numeric">
        <ForceWords word={word} />
      </td>
      <td className="data-table-buttons">
        <button
          type="button"
          className="button button-small"
          aria-label={`Take away step ${number}`}
          onClick={onTakeAway}
        >
          ×
        </button>
      </td>
    </tr>
  )
}

function ForceWords({ word }: { word: StepWord | undefined }) {
  const { force } = useQuantities()
  if (word === undefined) return null
  return (
    <>
      {word.forceN === null ? '–' : loadText(word.forceN, force)}
      {word.trouble === null ? null : <span className="matrix-trouble">{word.trouble}</span>}
    </>
  )
}
