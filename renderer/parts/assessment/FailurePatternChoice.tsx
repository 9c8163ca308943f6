import { useId } from 'react'
import type { FailurePattern } from '#contract/breaks/assessment.ts'
import { patternNames, patternOrder } from '#words/breaks/patternWords.ts'

/** The failure pattern by its EN ISO 10365 letters, the meaning of the chosen one in words below. */
export function FailurePatternChoice({
  value,
  onChange,
}: {
  value: FailurePattern | null
  onChange(pattern: FailurePattern | null): void
}) {
  const name = useId()
  return (
    <fieldset className="choice pattern">
      <legend>
        Failure pattern {value === null ? <span className="pattern-source">EN ISO 10365</span> : null}
        <span className="pattern-words">{value === null ? 'not assessed' : patternNames[value]}</span>
      </legend>
      <div className="choice-options">
        {patternOrder.map((pattern) => (
          <label key={pattern} title={patternNames[pattern]}>
            <input
              type="radio"
              name={name}
              data-pattern=""
              checked={pattern === value}
              aria-label={`${pattern}, ${patternNames[pattern]}`}
              onChange={() => onChange(pattern)}
              onKeyDown={(event) => {
                if (event.key === 'Backspace' || event.key === 'Delete') onChange(null)
              }}
            />
            <span aria-hidden="true">{pattern}</span>
          </label>
        ))}
      </div>
    </fieldset>
  )
}
