import { useId } from 'react'

export type ChoiceOption<T extends string> = { value: T; label: string; title?: string }

/** One of a few, side by side; arrow keys move between them. */
export function Choice<T extends string>({
  label,
  labelHidden = false,
  options,
  value,
  onChange,
  focusFirst = false,
  error = null,
}: {
  label: string
  labelHidden?: boolean
  options: readonly ChoiceOption<T>[]
  value: T | null
  onChange(value: T): void
  /** In a dialog: the focus begins here. */
  focusFirst?: boolean
  /** One sentence that says what is missing. */
  error?: string | null
}) {
  const name = useId()
  return (
    <fieldset
      className="choice"
      data-wrong={error === null ? undefined : ''}
      aria-describedby={error === null ? undefined : `${name}-error`}
    >
      <legend className={labelHidden ? 'visually-hidden' : ''}>{label}</legend>
      <div className="choice-options">
        {options.map((option, index) => (
          <label key={option.value} title={option.title}>
            <input
              type="radio"
              name={name}
              value={option.value}
              data-first-focus={focusFirst && index === 0 ? '' : undefined}
              checked={option.value === value}
              aria-invalid={error === null ? undefined : true}
              aria-describedby={error === null ? undefined : `${name}-error`}
              onChange={() => onChange(option.value)}
            />
            <span>{option.label}</span>
          </label>
        ))}
      </div>
      {error === null ? null : (
        <p id={`${name}-error`} className="field-error">
          {error}
        </p>
      )}
    </fieldset>
  )
}
