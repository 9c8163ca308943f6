import { firstWhere } from '../../numbers/risingSearch.ts'
import { sinceOrigin } from './captureStart.ts'
import type { CurveEvaluator } from './curveEvaluator.ts'

/** A capture while its samples come. */
export type RunningCapture = {
  readonly evaluator: CurveEvaluator
  /** SD of the signal before it, in the unit of the force. */
  readonly noise: number
  /** Takes samples [from, to) up to its end; returns the index after the last one that belongs to it. */
  take(timeS: Float64Array, force: Float64Array, reading: Float64Array, from: number, to: number): number
  over(): boolean
}

/** A capture in which the evaluation sees no load after this time, s, is given up. */
const giveUpS = 10

/** `originS`: stream time of its first sample; `noticedS`: at which the loading was noticed. The evaluator has taken what came before. Checked: tests/domain/signal/loading/runningCapture.spec.ts. */
export function createRunningCapture(
  evaluator: CurveEvaluator,
  originS: number,
  noticedS: number,
  noise: number,
): RunningCapture {
  let relativeS = new Float64Array()
  let givenUp = false
  return {
    evaluator,
    noise,
    take(timeS, force, reading, from, to) {
      const isLate = (i: number) => timeS[i]! - noticedS > giveUpS
      const until = evaluator.loading() ? to : Math.min(to, firstWhere(from, to, isLate) + 1)
      if (relativeS.length < until) relativeS = new Float64Array(timeS.length)
      sinceOrigin(originS, timeS, from, until, relativeS)
      const next = evaluator.take(relativeS, force, reading, from, until)
      givenUp = !evaluator.over() && !evaluator.loading() && isLate(next - 1)
      if (givenUp) evaluator.finish()
      return next
    },
    over: () => givenUp || evaluator.over(),
  }
}
