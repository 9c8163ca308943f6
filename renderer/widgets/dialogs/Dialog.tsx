import { type ReactNode, useRef, useState } from 'react'
import { isAnythingUnsaved } from '../forms/unsaved.ts'
import { LeaveDialogContext } from './dialogContext.ts'
import { LeaveQuestion } from './LeaveQuestion.tsx'
import { type DialogWidth, ModalDialog } from './ModalDialog.tsx'

/** A modal dialog. Escape and Cancel ask first where something was typed. */
export function Dialog({
  title,
  onClose,
  width = 'plain',
  children,
}: {
  title: string
  onClose(): void
  width?: DialogWidth
  children: ReactNode
}) {
  const dialog = useRef<HTMLDialogElement>(null)
  const [asking, setAsking] = useState(false)

  function leave(): void {
    if (isAnythingUnsaved('page', dialog.current)) setAsking(true)
    else onClose()
  }

  function throwAway(): void {
    setAsking(false)
    // Once the question is gone: nothing behind an open one can take the focus back
    setTimeout(onClose)
  }

  return (
    <ModalDialog title={title} onLeave={leave} width={width} element={dialog}>
      <LeaveDialogContext value={leave}>{children}</LeaveDialogContext>
      {asking ? <LeaveQuestion onLeave={throwAway} onStay={() => setAsking(false)} /> : null}
    </ModalDialog>
  )
}
