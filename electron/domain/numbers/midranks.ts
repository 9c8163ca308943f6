/** Ranks from 1 in the order of the values, equal ones sharing the mean of theirs; and Σ(t³ − t) over the ties. */
export type Midranks = { readonly ranks: Float64Array; readonly tieSum: number }

/**
 * Ranks of values, ties sharing theirs.
 * Source: Hollander and Wolfe, Nonparametric Statistical Methods, 1973, chapter 6 (from memory).
 * Checked: tests/domain/numbers/midranks.spec.ts against R rank.
 */
export function midranksOf(values: ArrayLike<number>): Midranks {
  const order = Array.from({ length: values.length }, (_, i) => i).sort((a, b) => values[a]! - values[b]!)
  const ranks = new Float64Array(values.length)
  let tieSum = 0
  for (let from = 0; from < order.length; ) {
    let to = from + 1
    while (to < order.length && values[order[to]!] === values[order[from]!]) to += 1
    const tied = to - from
    for (let i = from; i < to; i++) ranks[order[i]!] = (from + 1 + to) / 2
    tieSum += tied * tied * tied - tied
    from = to
  }
  return { ranks, tieSum }
}
