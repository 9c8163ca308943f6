/**
 * Where a rule changes its answer between two values, found by halving: so a limit is stated as a figure, and holds from both
 * sides. Throws RangeError where the answer is the same at both.
 */
export function limitOf(holds: (value: number) => boolean, low: number, high: number): number {
  const atLow = holds(low)
  if (holds(high) === atLow) throw new RangeError(`the rule says ${atLow} at ${low} and at ${high}`)
  let [from, to] = [low, high]
  for (let halving = 0; halving < 30 && to - from > 1e-6 * (high - low); halving++) {
    const middle = (from + to) / 2
    if (holds(middle) === atLow) from = middle
    else to = middle
  }
  return (from + to) / 2
}
