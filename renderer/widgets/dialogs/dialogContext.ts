// Held by tests/browser/formsRun.spec.ts.
import { createContext, useContext } from 'react'

/** Leaves the dialog that stands around, after a question where something was typed. */
export const LeaveDialogContext = createContext<() => void>(() => {})

/** What a Cancel button of a dialog does. */
export function useLeaveDialog(): () => void {
  return useContext(LeaveDialogContext)
}
