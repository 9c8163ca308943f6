import { calmRules, captureWindowS, glide, nextCeiling } from './calmAxis.ts'

/** What the live plot is asked to show, from the state of the bench. */
export type LiveSituation = 'rolling' | 'capturing' | 'held'

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

/** The view after the bench came into another situation at stream time `latestS`. */
export function enterSituation(view: LiveView, situation: LiveSituation, latestS: number, least: number): LiveView {
  if (situation === view.situation) return view
  if (situation === 'capturing')
    return { ...view, situation, captureFromS: latestS - leadS, ceiling: nextCeiling(0, 0, { ...calmRules, least }) }
  if (situation === 'held') return { ...view, situation, captureFromS: view.captureFromS ?? latestS - rollingWindowS }
  return { ...view, situation, captureFromS: null }
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
  // Rolling, a tall curve that has left the view gives its room back; during a capture the ceiling only grows.
  const ceiling =
    view.situation === 'rolling' && fresh < view.ceiling / 2 ? fresh : nextCeiling(view.ceiling, highest, rules)
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
