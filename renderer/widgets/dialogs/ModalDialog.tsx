import { type KeyboardEvent, type ReactNode, type Ref, useId, useLayoutEffect, useRef } from 'react'
import { rememberFocus } from '../focus/returnFocus.ts'
import { focusFirstField } from '../forms/focusField.ts'

const classNames = {
  plain: 'dialog',
  wide: 'dialog dialog-wide',
  widest: 'dialog dialog-widest',
  beside: 'dialog dialog-beside',
}

export type DialogWidth = keyof typeof classNames

/** Holds the focus while it is open, with its first field first, and gives it back when it closes. `onLeave`: Escape. */
export function ModalDialog({
  title,
  onLeave,
  width = 'plain',
  element: given,
  children,
}: {
  title: string
  onLeave(): void
  width?: DialogWidth
  element?: Ref<HTMLDialogElement>
  children: ReactNode
}) {
  const dialog = useRef<HTMLDialogElement>(null)
  const id = useId()
  // Before it leaves the page: its focus goes back before `keepFocus` has to look for another place
  useLayoutEffect(() => {
    const element = dialog.current
    if (element === null) return
    const giveBack = rememberFocus()
    if (!element.open) element.showModal()
    focusFirstField(element)
    return () => {
      element.close()
      giveBack()
    }
  }, [])

  function onKeyDown(event: KeyboardEvent): void {
    if (event.key !== 'Escape' || event.defaultPrevented) return
    // A browser closes a dialog at the second Escape, whatever was answered to its own question
    event.preventDefault()
    event.stopPropagation()
    onLeave()
  }

  return (
    <dialog
      ref={(element) => {
        dialog.current = element
        if (typeof given === 'object' && given !== null) given.current = element
      }}
      className={classNames[width]}
      aria-labelledby={id}
      onKeyDown={onKeyDown}
      onCancel={(event) => {
        event.preventDefault()
        onLeave()
      }}
    >
      <h1 id={id} className="dialog-title">
        {title}
      </h1>
      {children}
    </dialog>
  )
}
