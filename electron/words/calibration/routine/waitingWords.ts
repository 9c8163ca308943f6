/** That a reading is waited for, and why it is not steady yet where that is known. */
export function waitingWords({ unsteadyBecause }: { unsteadyBecause: string | null }): string {
  return unsteadyBecause === null ? 'Waiting for a steady reading.' : `Waiting: ${unsteadyBecause}.`
}
