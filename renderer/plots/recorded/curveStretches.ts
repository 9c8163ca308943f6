import type { ForceCurve } from '#contract/breaks/curve.ts'
import type { Span } from '../zoom.ts'

/** Asks for the samples of a stretch, thinned to at most `maxPoints`; null: all of it. Answers null when it cannot be had. */
export type LoadCurve = (span: Span | null, maxPoints: number) => Promise<ForceCurve | null>

/** The samples of one curve as far as they are here: those of the stretch asked for last, and the curve as a whole. */
export type CurveStretches = {
  shown(): ForceCurve | null
  whole(): ForceCurve | null
  /** Asks for a stretch; whatever was asked before no longer counts. */
  fetch(wanted: Span | null): void
  /** Shows the whole curve, as it came first. */
  showWhole(): void
  /** What is still on its way no longer counts. */
  end(): void
}

/**
 * Fetches a curve stretch by stretch. `accepts` says whether an answer takes the place of what is shown; `onArrival` is told
 * of each that did, with the stretch that was asked for.
 */
export function createCurveStretches(options: {
  load: LoadCurve
  maxPoints(): number
  accepts(answer: ForceCurve | null): boolean
  /** The first answer stands for the whole curve, even if only a stretch was asked for. */
  firstIsWhole: boolean
  onArrival(wanted: Span | null): void
}): CurveStretches {
  let shown: ForceCurve | null = null
  let whole: ForceCurve | null = null
  let asked = 0
  return {
    shown: () => shown,
    whole: () => whole,
    async fetch(wanted) {
      const turn = ++asked
      const answer = await options.load(wanted, options.maxPoints())
      if (turn !== asked || !options.accepts(answer)) return
      shown = answer
      if (wanted === null || (options.firstIsWhole && whole === null)) whole = answer
      options.onArrival(wanted)
    },
    showWhole() {
      asked++
      shown = whole
    },
    end() {
      asked++
    },
  }
}
