import { Field, type FieldProps } from '../Field.tsx'
import { type ComboboxOption, questionAbout } from './comboboxOptions.ts'
import { useCombobox } from './useCombobox.tsx'

/** A line of text with what can be chosen for it below. What is typed stands as it is where nothing is taken. */
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
  const combobox = useCombobox({
    label: field.label,
    typed: value,
    options,
    onTake: (option) => onValue(option.value, option),
  })
  return (
    <div className={`combobox ${className ?? ''}`}>
      <Field
        {...field}
        {...combobox.input}
        value={value}
        question={combobox.isOpen ? '' : questionAbout(options, value, newWords)}
        onChange={(event) => {
          onValue(event.currentTarget.value, null)
          combobox.onTyped()
        }}
        onBlur={combobox.close}
        onKeyDown={combobox.onKey}
      />
      {combobox.list}
    </div>
  )
}
