import { type ComponentProps, useId } from 'react'

/** What stands below a field, each tied to it: a hint, what is wrong, and what is doubtful although it is taken as it is. */
type Said = {
  hint?: string | undefined
  /** One sentence that says what is wrong and what to do. */
  error?: string | null | undefined
  question?: string | null | undefined
}

export type FieldProps = {
  label: string
  /** Written after the value, e.g. "mm". */
  unit?: string | undefined
  /** For counts alone: a keyboard of numbers on a touch screen has neither "/" nor letters, with which people write quantities. */
  inputMode?: 'numeric'
} & Said &
  Omit<ComponentProps<'input'>, 'id' | 'inputMode'>

/** A labelled line of input, with its unit, a hint and what is wrong with it. */
export function Field({ label, unit, hint, error, question, className, ...input }: FieldProps) {
  const id = useId()
  const said = { hint, error, question }
  return (
    <div className={`field ${className ?? ''}`} data-wrong={error ? '' : undefined}>
      <label htmlFor={id}>
        {label}
        {unit === undefined ? null : <span className="visually-hidden">, in {unit}</span>}
        {input.required ? <span className="field-required"> required</span> : null}
      </label>
      <div className="field-line">
        <input id={id} {...ariaOf(id, said)} {...input} />
        {unit === undefined ? null : (
          <span className="field-unit" aria-hidden="true">
            {unit}
          </span>
        )}
      </div>
      <FieldWords id={id} {...said} />
    </div>
  )
}

/** A labelled text of several lines. */
export function TextField({
  label,
  hint,
  error,
  ...area
}: { label: string } & Said & Omit<ComponentProps<'textarea'>, 'id'>) {
  const id = useId()
  return (
    <div className="field" data-wrong={error ? '' : undefined}>
      <label htmlFor={id}>
        {label}
        {area.required ? <span className="field-required"> required</span> : null}
      </label>
      <textarea id={id} rows={2} {...ariaOf(id, { hint, error })} {...area} />
      <FieldWords id={id} hint={hint} error={error} />
    </div>
  )
}

/** A labelled choice from a list. */
export function SelectField({
  label,
  hint,
  error,
  className,
  children,
  ...select
}: { label: string } & Said & Omit<ComponentProps<'select'>, 'id'>) {
  const id = useId()
  return (
    <div className={`field ${className ?? ''}`} data-wrong={error ? '' : undefined}>
      <label htmlFor={id}>{label}</label>
      <select id={id} {...ariaOf(id, { hint, error })} {...select}>
        {children}
      </select>
      <FieldWords id={id} hint={hint} error={error} />
    </div>
  )
}

function ariaOf(id: string, { hint, error, question }: Said) {
  const described = [
    hint === undefined ? '' : `${id}-hint`,
    error ? `${id}-error` : '',
    question ? `${id}-question` : '',
  ]
  return {
    'aria-describedby': described.filter((one) => one !== '').join(' ') || undefined,
    'aria-invalid': error ? true : undefined,
  }
}

/** What stands below the field with that id. */
export function FieldWords({ id, hint, error, question }: { id: string } & Said) {
  return (
    <>
      {hint === undefined ? null : (
        <p id={`${id}-hint`} className="field-hint">
          {hint}
        </p>
      )}
      {error ? (
        <p id={`${id}-error`} className="field-error">
          {error}
        </p>
      ) : null}
      {question === undefined ? null : (
        <p id={`${id}-question`} className="field-question" role="status">
          {question}
        </p>
      )}
    </>
  )
}
