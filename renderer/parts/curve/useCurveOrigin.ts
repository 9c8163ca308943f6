// Held by tests/browser/breaks/curveReview.spec.ts.
import type { BreakRecord } from '#contract/breaks/break.ts'
import { curveAbout } from '#words/breaks/curveWords.ts'
import { isSimulated } from '#words/keeping/demoWords.ts'
import { useFigureOrigin } from '../figures/useFigureOrigin.ts'

/** Words what stands below the curve of a break that is saved. */
export function useCurveOrigin(): (record: BreakRecord) => string[] {
  const originOf = useFigureOrigin()
  return (record) => originOf(curveAbout(record), isSimulated(record.summary) ? 'all' : 'none')
}
