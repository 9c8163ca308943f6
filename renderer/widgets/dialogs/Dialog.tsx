import { type ReactNode, useEffect, useId, useRef } from 'react'
import { rememberFocus } from './returnFocus.ts'

const classNames = {
  plain: 'dialog',
  wide: 'dialog dialog-wide',
  widest: 'dialog dialog-widest',
  beside: 'dialog dialog-beside',
}

/** A modal dialog: holds the focus while it is open and gives it back when it closes. */
export function Dialog({
  title,
  onClose,
  width = 'plain',
  children,
}: {
  title: string
  onClose(): void
  width?: keyof typeof classNames
  children: ReactNode
}) {
  const dialog = useRef<HTMLDialogElement>(null)
  const id = useId()
  useEffect(() => {
    const element = dialog.current
    if (element === null) return
    const giveBack = rememberFocus()
    if (!element.open) element.showModal()
    element.querySelector<HTMLElement>('[data-first-focus]')?.focus()
    return () => {
      element.close()
      giveBack()
    }
  }, [])
  return (
    <dialog
      ref={dialog}
      className={classNames[width]}
      aria-labelledby={id}
      onCancel={(event) => {
        event.preventDefault()
        onClose()
      }}
    >
      <h1 id={id} className="dialog-title">
        {title}
      </h1>
      {children}
    </dialog>
  )
}
