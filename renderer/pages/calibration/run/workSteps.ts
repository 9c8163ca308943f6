import { useSingleKeys } from '../../../parts/routing/singleKeys.ts'

/** What the person can do at this step; null: not now. */
export type WorkSteps = {
  goOn: (() => void) | null
  stop: (() => void) | null
  repeat: (() => void) | null
  skip: (() => void) | null
  back: (() => void) | null
  breakOff(): void
  /** Hangs the weights on the virtual cell; null: the cell is a real one. */
  hang: (() => void) | null
}

/** The keys of the routine. `wiringAsked`: the person must say first whether the cell is wired in reverse, so Enter does not go on. */
export function useWorkKeys(steps: WorkSteps, wiringAsked: boolean): void {
  useSingleKeys((key) => {
    const name = key.toLowerCase()
    if (key === 'Enter') {
      if (!wiringAsked) steps.goOn?.()
    } else if (key === 'Escape') steps.stop?.()
    else if (name === 'r') steps.repeat?.()
    else if (name === 'n') steps.skip?.()
    else if (key === 'Backspace') steps.back?.()
    else if (name === 'b') steps.breakOff()
    else if (name === 'l' && steps.hang !== null) steps.hang()
    else return false
    return true
  })
}
