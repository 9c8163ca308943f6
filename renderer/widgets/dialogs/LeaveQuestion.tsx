import { ModalDialog } from './ModalDialog.tsx'

/** Asks whether what was typed may be thrown away. */
export function LeaveQuestion({ onLeave, onStay }: { onLeave(): void; onStay(): void }) {
  return (
    <ModalDialog title="Leave without saving?" onLeave={onStay}>
      <p>What you typed here is not saved yet.</p>
      <div className="dialog-buttons">
        <button type="button" className="button" onClick={onLeave}>
          Leave without saving
        </button>
        <button type="button" className="button button-primary" data-first-focus="" onClick={onStay}>
          Stay here
        </button>
      </div>
    </ModalDialog>
  )
}
