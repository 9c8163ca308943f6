/** Forces that differ by no more than this share of themselves are meant to be the same load. */
const sameLoadShare = 1e-3

/**
 * The step that each force belongs to, N: the same number for forces that are one load.
 *
 * Weights of one nominal value differ, and a reference cell is never met to the last digit, so repeats of a step need not
 * have equal forces. Going up from the lowest, forces within 0.1 % of the lowest of their step are one step; its number is that
 * force, or the mean of the different ones. 0 is the zero point and stands alone.
 * Source: common practice, no source; 0.1 % is the widest that two weights of class M3 can lie apart (OIML R 111-1:2004, Table 1).
 * Checked: tests/domain/calibration/steps/forceSteps.spec.ts.
 */
export function forceSteps(forcesN: readonly number[]): number[] {
  const rising = [...new Set(forcesN)].sort((one, other) => one - other)
  const stepOf = new Map<number, number>()
  for (let from = 0; from < rising.length; ) {
    const lowest = rising[from]!
    const above = rising.findIndex((forceN) => forceN > lowest * (1 + sameLoadShare))
    const members = rising.slice(from, above < 0 ? rising.length : above)
    const mean = members.reduce((sum, forceN) => sum + forceN, 0) / members.length
    // Twelve digits: what differs in rounding only is not worth a digit more on a screen. Never outside its own forces, though:
    // the lowest and the highest step bound the verified range and must lie in it.
    const stepN = Math.min(Math.max(Number(mean.toPrecision(12)), lowest), members.at(-1)!)
    for (const forceN of members) stepOf.set(forceN, stepN)
    from += members.length
  }
  return forcesN.map((forceN) => stepOf.get(forceN)!)
}
