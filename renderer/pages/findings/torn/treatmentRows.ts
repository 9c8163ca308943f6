import type { FindingsOptions } from '#contract/findings/options.ts'
import { inOrder } from '../findingsQuestions.ts'

/** A way to treat torn wood, with the distribution where there are several. */
export type Treated = Pick<FindingsOptions, 'woodFailure'> & { distribution: FindingsOptions['distribution'] }

/** All ways beside each other; the first is what the others are held against. */
export const allTreatments: readonly Treated[] = [
  { woodFailure: 'observed', distribution: null },
  { woodFailure: 'bond-only', distribution: null },
  { woodFailure: 'censored', distribution: 'normal' },
  { woodFailure: 'censored', distribution: 'lognormal' },
  { woodFailure: 'censored', distribution: 'weibull' },
  { woodFailure: 'adjusted', distribution: null },
]

/** A mean with its interval; null: there is none. */
export type TreatedMean = { meanMPa: number | null; lowMPa: number | null; highMPa: number | null }

/** A group under one treatment: its place by the mean, and how many places it moved up from the first treatment's (down: below 0). */
export type TreatedCell = TreatedMean & { place: number | null; up: number | null }
export type TreatedRow = { group: string; cells: TreatedCell[] }

/**
 * Groups in the order of the first treatment, each with its mean and place under all of them. A move counts only groups that have a
 * mean under both treatments: one without a mean moves nobody.
 */
export function treatmentRows(
  groups: readonly string[],
  means: readonly ReadonlyMap<string, TreatedMean>[],
): TreatedRow[] {
  const meanOf = (at: number) => (group: string) => means[at]?.get(group)?.meanMPa ?? null
  const orders = means.map((_, at) => inOrder(groups, meanOf(at)))
  const [first = []] = orders
  const shown = [...first, ...groups.filter((group) => !first.includes(group))]
  return shown.map((group) => ({
    group,
    cells: orders.map((order, at) => {
      const none = { meanMPa: null, lowMPa: null, highMPa: null }
      const among = first.filter((one) => order.includes(one))
      const now = order.filter((one) => first.includes(one))
      const known = among.includes(group)
      return {
        ...(means[at]?.get(group) ?? none),
        place: order.includes(group) ? 1 + order.indexOf(group) : null,
        up: known ? among.indexOf(group) - now.indexOf(group) : null,
      }
    }),
  }))
}
