// Held by tests/browser/lastBreakRun.spec.ts.
import { useEffect, useState } from 'react'
import type { BreakSummary } from '#contract/breaks/break.ts'

/** How often it is looked whether the person is done with the break before, ms. */
const lookEveryMs = 150

/**
 * The break that the panel is about: the newest, but not before the person has finished what was begun for the one before, so
 * that no word and no key of it lands in the next.
 */
export function useShownBreak(newest: BreakSummary, isBusy: () => boolean): BreakSummary {
  const [shown, setShown] = useState(newest)
  const isOther = shown.breakId !== newest.breakId
  useEffect(() => {
    if (!isOther || !isBusy()) return setShown(newest)
    const timer = setInterval(() => {
      if (!isBusy()) setShown(newest)
    }, lookEveryMs)
    return () => clearInterval(timer)
  }, [newest, isOther, isBusy])
  return shown
}
