import { type ClipboardEvent, type KeyboardEvent, useId, useState } from 'react'
import type { ComboboxOption } from './combobox/comboboxOptions.ts'
import { useCombobox } from './combobox/useCombobox.tsx'
import { FieldWords } from './Field.tsx'
import './listField.css'

/** What parts several entries that are typed or pasted at once. */
const between = /[;\n\t]+/

/**
 * A field into which one thing after another is entered, typed or chosen: Enter or leaving the field enters it, Backspace in the empty field
 * takes the last one out again.
 */
export function ListField({
  label,
  values,
  hint,
  error = null,
  required = false,
  placeholder,
  options,
  onAdd,
  onRemove,
}: {
  label: string
  /** What was entered, as it is shown. */
  values: readonly string[]
  hint?: string
  error?: string | null
  required?: boolean
  placeholder?: string
  /** What can be chosen below it, beside whatever is typed. */
  options?: readonly ComboboxOption[]
  /** Enters some; returns what is wrong with them, and they stay to be mended. */
  onAdd(texts: readonly string[]): string | null
  onRemove(index: number): void
}) {
  const id = useId()
  const [typed, setTyped] = useState('')
  const [wrong, setWrong] = useState<string | null>(null)
  const said = wrong ?? error
  const combobox = useCombobox({
    label,
    typed,
    options: (options ?? []).filter(({ value }) => !values.includes(value)),
    onTake: ({ value }) => add([value]),
  })

  function add(texts: readonly string[]): void {
    if (texts.length === 0) return
    const refused = onAdd(texts)
    setWrong(refused)
    if (refused === null) setTyped('')
  }

  function enter(text: string): void {
    const texts = text.split(between).map((one) => one.trim())
    add(texts.filter((one) => one !== ''))
  }

  function onKeyDown(event: KeyboardEvent<HTMLInputElement>): void {
    if (options !== undefined && combobox.onKey(event)) return
    if (event.key === 'Enter' && typed.trim() !== '') {
      event.preventDefault()
      combobox.close()
      enter(typed)
    } else if (event.key === 'Backspace' && typed === '' && values.length > 0) onRemove(values.length - 1)
  }

  function onPaste(event: ClipboardEvent<HTMLInputElement>): void {
    const text = event.clipboardData.getData('text')
    if (!between.test(text.trim())) return
    event.preventDefault()
    enter(typed + text)
  }

  return (
    <div className="field list-field" data-wrong={said === null ? undefined : ''}>
      <label htmlFor={id}>
        {label}
        {required ? <span className="field-required"> required</span> : null}
      </label>
      <div className="list-field-line">
        {values.length === 0 ? null : <Entered {...{ label, values, onRemove }} />}
        <input
          id={id}
          {...(options === undefined ? {} : combobox.input)}
          value={typed}
          placeholder={values.length === 0 ? placeholder : undefined}
          maxLength={10_000}
          autoComplete="off"
          aria-describedby={`${id}-hint ${id}-error`}
          aria-invalid={said === null ? undefined : true}
          onChange={(event) => {
            setTyped(event.currentTarget.value)
            setWrong(null)
            combobox.onTyped()
          }}
          onKeyDown={onKeyDown}
          onPaste={onPaste}
          onBlur={() => {
            combobox.close()
            enter(typed)
          }}
        />
        {options === undefined ? null : combobox.list}
      </div>
      {/* Whoever looks whether a form was changed sees what was entered */}
      <input type="hidden" value={values.join('\n')} />
      <FieldWords id={id} hint={hint} error={said} />
    </div>
  )
}

/** What was entered so far, each with a way out. */
function Entered({
  label,
  values,
  onRemove,
}: {
  label: string
  values: readonly string[]
  onRemove(index: number): void
}) {
  return (
    <ul aria-label={label}>
      {values.map((value, index) => (
        <li key={value}>
          {value}
          <button type="button" aria-label={`Take ${value} out`} onClick={() => onRemove(index)}>
            ×
          </button>
        </li>
      ))}
    </ul>
  )
}
