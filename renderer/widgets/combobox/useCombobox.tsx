// Held by tests/browser/formsRun.spec.ts.
import {
  type ComponentProps,
  type KeyboardEvent,
  type ReactNode,
  useId,
  useLayoutEffect,
  useRef,
  useState,
} from 'react'
import { type ComboboxOption, markedAfterKey, mostShown, optionsThatFit } from './comboboxOptions.ts'
import './combobox.css'

/** What a line of text needs that options can be taken into. */
export type ComboboxParts = {
  /** For the input beside its own; hears the mouse. */
  input: Pick<
    ComponentProps<'input'>,
    | 'autoComplete'
    | 'role'
    | 'aria-autocomplete'
    | 'aria-expanded'
    | 'aria-controls'
    | 'aria-activedescendant'
    | 'onClick'
  >
  /** What can be chosen, below it. */
  list: ReactNode
  /** Whether it is open, whatever fits. */
  isOpen: boolean
  /** Something was typed: from then on the list holds what fits that. */
  onTyped(): void
  /** True: the key was meant for the list. */
  onKey(event: KeyboardEvent<HTMLInputElement>): boolean
  close(): void
}

/**
 * A list to choose from below a line of text (WAI-ARIA, editable combobox with a list): typing narrows it, arrow keys mark, Enter
 * takes, Escape closes.
 */
export function useCombobox<Option extends ComboboxOption>({
  label,
  typed,
  options,
  onTake,
}: {
  label: string
  typed: string
  options: readonly Option[]
  onTake(option: Option): void
}): ComboboxParts {
  const id = useId()
  const [isOpen, setOpen] = useState(false)
  const [marked, setMarked] = useState(-1)
  /** All are shown until something is typed. */
  const [typing, setTyping] = useState(false)
  const fitting = isOpen ? optionsThatFit(options, typing ? typed : '') : []
  const shown = fitting.slice(0, mostShown)
  const isShown = shown.length > 0

  function close(): void {
    setOpen(false)
    setMarked(-1)
    setTyping(false)
  }

  function take(option: Option): void {
    onTake(option)
    close()
  }

  function onKey(event: KeyboardEvent<HTMLInputElement>): boolean {
    const { key } = event
    if ((key === 'ArrowDown' || key === 'ArrowUp') && !event.altKey) {
      setOpen(true)
      setMarked(isShown ? markedAfterKey(key, marked, shown.length) : key === 'ArrowDown' ? 0 : -1)
    } else if (key === 'Enter' && isShown && marked >= 0) take(shown[marked]!)
    else if (key === 'Escape' && isShown) {
      // The dialog around it stays
      event.stopPropagation()
      close()
    } else return false
    event.preventDefault()
    return true
  }

  return {
    input: {
      autoComplete: 'off',
      role: 'combobox',
      'aria-autocomplete': 'list',
      'aria-expanded': isShown,
      'aria-controls': isShown ? `${id}-list` : undefined,
      'aria-activedescendant': isShown && marked >= 0 ? `${id}-${marked}` : undefined,
      onClick: () => setOpen(true),
    },
    list: isShown ? <OptionList id={id} label={label} options={fitting} marked={marked} onTake={take} /> : null,
    isOpen,
    onTyped() {
      setTyping(true)
      setOpen(true)
      setMarked(-1)
    },
    onKey,
    close,
  }
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
