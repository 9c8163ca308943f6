import { type KeyboardEvent, useId, useLayoutEffect, useRef, useState } from 'react'
import { Field, type FieldProps } from '../Field.tsx'
import { type ComboboxOption, isAmong, markedAfterKey, mostShown, optionsThatFit } from './comboboxOptions.ts'
import './combobox.css'

/**
 * A line of text with what can be chosen for it below (WAI-ARIA, editable combobox with a list): typing narrows the list, arrow
 * keys mark, Enter takes, Escape closes. What is typed stands as it is where nothing is taken.
 */
export function Combobox<Option extends ComboboxOption>({
  value,
  options,
  onValue,
  newWords,
  className,
  ...field
}: Omit<FieldProps, 'value' | 'onChange' | 'question' | 'list'> & {
  value: string
  options: readonly Option[]
  /** `chosen` null: it was typed. */
  onValue(value: string, chosen: Option | null): void
  /** Said of a text that is none of the options. */
  newWords: string
}) {
  const id = useId()
  const [open, setOpen] = useState(false)
  const [marked, setMarked] = useState(-1)
  /** All are shown until something is typed. */
  const [typing, setTyping] = useState(false)
  const fitting = open ? optionsThatFit(options, typing ? value : '') : []
  const shown = fitting.slice(0, mostShown)
  const isOpen = open && shown.length > 0

  function close(): void {
    setOpen(false)
    setMarked(-1)
    setTyping(false)
  }

  function take(option: Option): void {
    onValue(option.value, option)
    close()
  }

  function onKeyDown(event: KeyboardEvent<HTMLInputElement>): void {
    const { key } = event
    if ((key === 'ArrowDown' || key === 'ArrowUp') && !event.altKey) {
      event.preventDefault()
      setOpen(true)
      setMarked(isOpen ? markedAfterKey(key, marked, shown.length) : key === 'ArrowDown' ? 0 : -1)
    } else if (key === 'Enter' && isOpen && marked >= 0) {
      event.preventDefault()
      take(shown[marked]!)
    } else if (key === 'Escape' && isOpen) {
      // The dialog around it stays
      event.preventDefault()
      event.stopPropagation()
      close()
    }
  }

  return (
    <div className={`combobox ${className ?? ''}`}>
      <Field
        {...field}
        value={value}
        autoComplete="off"
        role="combobox"
        aria-autocomplete="list"
        aria-expanded={isOpen}
        aria-controls={isOpen ? `${id}-list` : undefined}
        aria-activedescendant={isOpen && marked >= 0 ? `${id}-${marked}` : undefined}
        question={open || value.trim() === '' || isAmong(options, value) ? '' : newWords}
        onChange={(event) => {
          onValue(event.currentTarget.value, null)
          setTyping(true)
          setOpen(true)
          setMarked(-1)
        }}
        onClick={() => setOpen(true)}
        onBlur={close}
        onKeyDown={onKeyDown}
      />
      {isOpen ? <OptionList id={id} label={field.label} options={fitting} marked={marked} onTake={take} /> : null}
    </div>
  )
}

/** What can be chosen; the field keeps the focus and hears the keys. */
function OptionList<Option extends ComboboxOption>({
  id,
  label,
  options,
  marked,
  onTake,
}: {
  id: string
  label: string
  options: readonly Option[]
  marked: number
  onTake(option: Option): void
}) {
  const list = useRef<HTMLDivElement>(null)
  useLayoutEffect(() => {
    if (marked >= 0) list.current?.querySelector('[aria-selected="true"]')?.scrollIntoView({ block: 'nearest' })
  }, [marked])
  return (
    <div className="combobox-list" ref={list}>
      <div role="listbox" id={`${id}-list`} aria-label={label}>
        {options.slice(0, mostShown).map((option, index) => (
          // biome-ignore lint/a11y/useKeyWithClickEvents: keys are heard by the field
          <div
            key={`${option.value}\n${option.detail ?? ''}`}
            id={`${id}-${index}`}
            role="option"
            tabIndex={-1}
            aria-selected={index === marked}
            onMouseDown={(event) => event.preventDefault()}
            onClick={() => onTake(option)}
          >
            {option.value}
            {option.detail === undefined ? null : <span className="combobox-detail"> {option.detail}</span>}
          </div>
        ))}
      </div>
      {options.length > mostShown ? (
        <p className="combobox-more">{options.length - mostShown} more: type a part of the name.</p>
      ) : null}
    </div>
  )
}
