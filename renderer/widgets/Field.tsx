import { type ComponentProps, useId } from 'react'

export type FieldProps = {
  label: string
  /** Written after the value, e.g. "mm". */
  unit?: string | undefined
  hint?: string | undefined
  /** One sentence that says what is wrong and what to do. */
  error?: string | null | undefined
} & Omit<ComponentProps<'input'>, 'id'>

/** A labelled line of input, with its unit, a hint and what is wrong with it. */
export function Field({ label, unit, hint, error, className, ...input }: FieldProps) {
  const id = useId()
  const described = [hint === undefined ? null : `${id}-hint`, error ? `${id}-error` : null].filter(Boolean).join(' ')
  return (
    <div className={`field ${className ?? ''}`} data-wrong={error ? '' : undefined}>
      <label htmlFor={id}>
        {label}
        {unit === undefined ? null : <span className="visually-hidden">, in {unit}</span>}
        {input.required ? <span className="field-required"> required</span> : null}
      </label>
      <div className="field-line">
        <input id={id} aria-describedby={described || undefined} aria-invalid={error ? true : undefined} {...input} />
        {unit === undefined ? null : (
          <span className="field-unit" aria-hidden="true">
            {unit}
          </span>
        )}
      </div>
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
    </div>
  )
}

/** A labelled text of several lines. */
export function TextField({
  label,
  hint,
  error,
  ...area
}: { label: string; hint?: string; error?: string | null } & Omit<ComponentProps<'textarea'>, 'id'>) {
  const id = useId()
  const described = [hint === undefined ? null : `${id}-hint`, error ? `${id}-error` : null].filter(Boolean).join(' ')
  return (
    <div className="field" data-wrong={error ? '' : undefined}>
      <label htmlFor={id}>
        {label}
        {area.required ? <span className="field-required"> required</span> : null}
      </label>
      <textarea
        id={id}
        rows={2}
        aria-describedby={described || undefined}
        aria-invalid={error ? true : undefined}
        {...area}
      />
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
    </div>
  )
}

/** A labelled choice from a list. */
export function SelectField({
  label,
  hint,
  children,
  ...select
}: { label: string; hint?: string } & Omit<ComponentProps<'select'>, 'id'>) {
  const id = useId()
  return (
    <div className="field">
      <label htmlFor={id}>{label}</label>
      <select id={id} aria-describedby={hint === undefined ? undefined : `${id}-hint`} {...select}>
        {children}
      </select>
      {hint === undefined ? null : (
        <p id={`${id}-hint`} className="field-hint">
          {hint}
        </p>
      )}
    </div>
  )
}
