import { type FormEvent, type ReactNode, useEffect, useLayoutEffect, useRef, useState } from 'react'
import { focusFirstField, focusFirstWrong } from './focusField.ts'
import { areChanged, fieldValues, watchUnsaved } from './unsaved.ts'

/**
 * A form: its first field has the focus when it opens, a refused submission puts it on the first field that is wrong, and
 * what was typed is not left unasked. Enter submits it by its first button, Ctrl and Enter by the one marked `data-ctrl-enter`.
 */
export function Form({
  onSubmit,
  className = 'form',
  focusFirst = true,
  keepsItself = false,
  begunElsewhere = false,
  children,
}: {
  /** Resolves with true when what was typed is kept. `by`: the value of the button that was pressed. */
  onSubmit(by: string): Promise<boolean> | boolean
  className?: string
  /** Not on a page that is more than this form. */
  focusFirst?: boolean
  /** What is typed is kept as it is typed: nothing is asked on leaving. */
  keepsItself?: boolean
  /** It opens with what was decided elsewhere and is kept nowhere yet: leaving asks although nobody typed here. */
  begunElsewhere?: boolean
  children: ReactNode
}) {
  const form = useRef<HTMLFormElement>(null)
  /** What the fields said when it opened or was last kept. */
  const kept = useRef<ReadonlyMap<Element, string>>(new Map())
  const touched = useRef(false)
  const begun = useRef(begunElsewhere)
  const busy = useRef(false)
  const [timesKept, setTimesKept] = useState(0)

  useEffect(() => {
    const element = form.current
    if (element === null) return
    // A dialog is not open yet; it does this itself
    if (focusFirst && element.closest('dialog') === null) focusFirstField(element)
    const submitOtherwise = (event: KeyboardEvent) => {
      const button = element.querySelector<HTMLElement>('button[data-ctrl-enter]')
      if (button === null || event.key !== 'Enter' || !(event.ctrlKey || event.metaKey)) return
      event.preventDefault()
      button.click()
    }
    element.addEventListener('keydown', submitOtherwise)
    if (keepsItself) return () => element.removeEventListener('keydown', submitOtherwise)
    const touch = () => {
      touched.current = true
    }
    for (const kind of ['input', 'click', 'keydown']) element.addEventListener(kind, touch)
    const end = watchUnsaved({
      place: () => form.current,
      isUnsaved: () => begun.current || (touched.current && areChanged(kept.current, fieldValues(element))),
    })
    return () => {
      for (const kind of ['input', 'click', 'keydown']) element.removeEventListener(kind, touch)
      element.removeEventListener('keydown', submitOtherwise)
      end()
    }
  }, [focusFirst, keepsItself])

  // Drawn together with what a kept form goes on with: what is typed from then on is new
  useLayoutEffect(() => {
    if (form.current !== null) kept.current = fieldValues(form.current)
  }, [timesKept])

  async function submit(event: FormEvent): Promise<void> {
    event.preventDefault()
    if (busy.current) return
    const { submitter } = event.nativeEvent as SubmitEvent
    busy.current = true
    const isKept = await onSubmit(submitter instanceof HTMLButtonElement ? submitter.value : '')
    busy.current = false
    if (!isKept) return focusFirstWrong(form.current)
    touched.current = false
    begun.current = false
    setTimesKept((times) => times + 1)
  }

  return (
    <form ref={form} className={className} noValidate onSubmit={(event) => void submit(event)}>
      {children}
    </form>
  )
}
