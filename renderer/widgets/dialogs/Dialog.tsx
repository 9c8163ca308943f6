import { type ReactNode, useEffect, useId, useRef } from 'react'
import { rememberFocus } from './returnFocus.ts'

/** A modal dialog: holds the focus while it is open and gives it back when it closes. */
export function Dialog({
  title,
  onClose,
  wide = false,
  children,
}: {
  title: string
  onClose(): void
  wide?: boolean
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
      className={wide ? 'dialog dialog-wide' : 'dialog'}
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
