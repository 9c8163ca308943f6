import type { BenchPhase } from '#contract/bench/bench.ts'
import { type CeilingRules, calmRules, captureWindowS, glide, nextCeiling, roundUpCalmly } from './calmAxis.ts'

/** What the live plot is asked to show, from the state of the bench. */
export type LiveSituation = 'rolling' | 'capturing' | 'held'

/** The situation of the plot in a phase of the bench. */
export function situationOf(phase: BenchPhase): LiveSituation {
  if (phase === 'loading') return 'capturing'
  return phase === 'broke' || phase === 'unloaded' ? 'held' : 'rolling'
}

export type LiveView = {
  situation: LiveSituation
  /** Stream time at which the running or held capture began. */
  captureFromS: number | null
  ceiling: number
  shownCeiling: number
  shownFromS: number
  shownToS: number
  /** Length of the capture's time axis, kept when the capture has ended. */
  heldLengthS: number
}

/** How long the rolling view is, s. */
export const rollingWindowS = 20
/** What is shown from before the start of a capture, s. */
export const leadS = 1
const tauS = 0.12
/** Where the highest load of an ended capture stands, as a share of the axis. */
const heldShare = 0.95

/** A view that has seen nothing yet; `least` is the lowest ceiling of the force axis. */
export function startView(least: number): LiveView {
  const ceiling = nextCeiling(0, 0, { ...calmRules, least })
  return {
    situation: 'rolling',
    captureFromS: null,
    ceiling,
    shownCeiling: ceiling,
    shownFromS: 0,
    shownToS: rollingWindowS,
    heldLengthS: rollingWindowS,
  }
}

/**
 * The view after the bench came into another situation at stream time `latestS`. `captureFromS` says where a capture comes
 * into view, when that is known from before.
 */
export function enterSituation(
  view: LiveView,
  situation: LiveSituation,
  latestS: number,
  least: number,
  captureFromS: number | null = null,
): LiveView {
  if (situation === view.situation) return view
  if (situation === 'rolling') return { ...view, situation, captureFromS: null }
  const fresh = view.situation === 'rolling'
  const fromS = captureFromS ?? view.captureFromS ?? latestS - (situation === 'capturing' ? leadS : rollingWindowS)
  return {
    ...view,
    situation,
    captureFromS: fromS,
    ceiling: situation === 'capturing' ? nextCeiling(0, 0, { ...calmRules, least }) : view.ceiling,
    heldLengthS: fresh ? captureWindowS(latestS - fromS) : view.heldLengthS,
  }
}

/** The view one frame later: `highest` is the highest force in sight. Equal to the one before when nothing moves. */
export function advanceView(
  view: LiveView,
  latestS: number,
  highest: number,
  least: number,
  frameS: number,
  reducedMotion: boolean,
): LiveView {
  const rules = { ...calmRules, least }
  const fresh = nextCeiling(0, highest, rules)
  const ceiling = ceilingOf(view, highest, fresh, rules)
  const tau = reducedMotion ? 0 : tauS
  const shownCeiling = glide(view.shownCeiling, ceiling, frameS, tau, ceiling * 1e-3)
  if (view.captureFromS === null)
    return { ...view, ceiling, shownCeiling, shownFromS: latestS - rollingWindowS, shownToS: latestS }
  const fromS = view.captureFromS
  const lengthS = view.situation === 'held' ? view.heldLengthS : captureWindowS(latestS - fromS)
  return {
    ...view,
    ceiling,
    shownCeiling,
    heldLengthS: lengthS,
    shownFromS: glide(view.shownFromS, fromS, frameS, tau, lengthS * 1e-3),
    shownToS: glide(view.shownToS, fromS + lengthS, frameS, tau, lengthS * 1e-3),
  }
}

/** Rolling, a tall curve that has left the view gives its room back; a capture only grows; once it is over, it fills the plot. */
function ceilingOf(view: LiveView, highest: number, fresh: number, rules: CeilingRules): number {
  if (view.situation === 'held') return roundUpCalmly(Math.max(highest / heldShare, rules.least))
  if (view.situation === 'rolling' && fresh < view.ceiling / 2) return fresh
  return nextCeiling(view.ceiling, highest, rules)
}
