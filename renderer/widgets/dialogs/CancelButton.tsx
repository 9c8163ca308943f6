import { useLeaveDialog } from './dialogContext.ts'

/** Leaves the dialog that it stands in. */
export function CancelButton({ children = 'Cancel' }: { children?: string }) {
  return (
    <button type="button" className="button" onClick={useLeaveDialog()}>
      {children}
    </button>
  )
}
