import { chiSquareUpperTail } from '../numbers/distributions/chiSquare.ts'
import { cholesky } from '../numbers/matrices/cholesky.ts'
import { momentsOf } from '../numbers/moments.ts'
import { bestVarianceRatio } from '../numbers/varianceRatio.ts'

/** A block with its group and the board it was cut from. */
export type BoardBlock = { readonly group: string; readonly board: string; readonly strengthMPa: number }

/** Means of groups with the boards taken into account. MPa. */
export type BoardEffect = {
  /** Spread between boards; 0: they differ by no more than their blocks. */
  readonly boardSdMPa: number
  /** Spread of the blocks of one group and board. */
  readonly blockSdMPa: number
  /** Share of the variance that lies between boards, 0 to 1. */
  readonly boardShare: number
  /** That boards as different as these come from boards all alike: half a chi-square of one degree of freedom. */
  readonly p: number
  readonly groups: readonly { group: string; meanMPa: number; standardErrorMPa: number }[]
  /** By how much each board lies above the others, drawn towards 0 as far as its blocks are few. */
  readonly boards: readonly { board: string; aboveMPa: number }[]
}

/** A spread below this share of the strengths is rounding, and none. */
const noSpread = 1e-12

/** Sums over which every quantity of the model is a few products; V is the identity plus the ratio within each board. */
function sumsOf(blocks: readonly BoardBlock[]) {
  const groups = [...new Set(blocks.map(({ group }) => group))]
  const boards = [...new Set(blocks.map(({ board }) => board))]
  const groupAt = new Map(groups.map((group, i) => [group, i]))
  const boardAt = new Map(boards.map((board, i) => [board, i]))
  // About the mean of each group, which the model has a parameter for: groups far apart cost no digits.
  const own = Map.groupBy(blocks, ({ group }) => group)
  const centres = groups.map((group) => momentsOf(own.get(group)!.map(({ strengthMPa }) => strengthMPa)).mean)
  const counts = boards.map(() => new Float64Array(groups.length))
  const boardSums = new Float64Array(boards.length)
  const groupSums = new Float64Array(groups.length)
  let squares = 0
  for (const { group, board, strengthMPa } of blocks) {
    const g = groupAt.get(group)!
    const k = boardAt.get(board)!
    const y = strengthMPa - centres[g]!
    counts[k]![g] = counts[k]![g]! + 1
    boardSums[k] = boardSums[k]! + y
    groupSums[g] = groupSums[g]! + y
    squares += y * y
  }
  const sizes = counts.map((row) => row.reduce((sum, n) => sum + n, 0))
  return { groups, boards, centres, counts, sizes, boardSums, groupSums, squares, n: blocks.length }
}

/** Weighted normal equations at a ratio of the variance between boards to that of blocks. */
function fitAt(sums: ReturnType<typeof sumsOf>, ratio: number) {
  const { groups, counts, sizes, boardSums, groupSums, squares, n } = sums
  const p = groups.length
  const weights = sizes.map((size) => ratio / (1 + size * ratio))
  const normal = groups.map((_, g) =>
    Float64Array.from(groups, (_other, h) => {
      let entry = 0
      counts.forEach((row, k) => {
        entry += (g === h ? row[g]! : 0) - weights[k]! * row[g]! * row[h]!
      })
      return entry
    }),
  )
  const right = Float64Array.from(groupSums, (sum, g) =>
    counts.reduce((rest, row, k) => rest - weights[k]! * row[g]! * boardSums[k]!, sum),
  )
  const reduced = cholesky(normal)
  const means = reduced.solve(right)
  const whole = weights.reduce((rest, weight, k) => rest - weight * boardSums[k]! ** 2, squares)
  const rss = means.reduce((rest, mean, g) => rest - mean * right[g]!, whole)
  const logV = sizes.reduce((sum, size) => sum + Math.log1p(size * ratio), 0)
  const deviance = (n - p) * Math.log(rss) + logV + reduced.logDeterminant
  return { means, reduced, rss, weights, deviance }
}

/**
 * Groups compared on the same boards: strength = mean of its group + its board, boards normal about 0; fitted by restricted
 * maximum likelihood over the ratio of the two variances, with all else in closed form.
 *
 *   V = σ²(I + λ Z Zᵀ)    D(λ) = (n − p) ln RSS + Σ ln(1 + nₖ λ) + ln |Xᵀ V⁻¹ X|    σ² = RSS/(n − p)
 *
 * Null with fewer than two boards, with no board that bears two groups, with one block of each board, or with no spread left: then boards
 * cannot be told from groups, or from blocks.
 * Source: Searle, Casella and McCulloch, Variance Components, 1992, chapter 6 (from memory); Self and Liang, Journal of the American
 * Statistical Association 82 (1987) 605, for p (from memory).
 * Checked: tests/domain/findings/boardEffect.spec.ts against R lme4.
 */
export function boardEffect(blocks: readonly BoardBlock[]): BoardEffect | null {
  const sums = sumsOf(blocks)
  const { groups, boards, counts, sizes, boardSums, centres, n } = sums
  const df = n - groups.length
  const isCrossed = counts.some((row) => row.filter((count) => count > 0).length > 1)
  const isRepeated = sizes.some((size) => size > 1)
  if (boards.length < 2 || !isRepeated || (!isCrossed && groups.length > 1) || df < 2) return null
  const largest = centres.reduce((most, centre) => Math.max(most, Math.abs(centre)), 0)
  if (!(sums.squares > n * (noSpread * largest) ** 2)) return null
  const ratio = bestVarianceRatio((candidate) => fitAt(sums, candidate).deviance)
  const { means, reduced, rss, weights, deviance } = fitAt(sums, ratio)
  const variance = rss / df
  const unit = (g: number) => Float64Array.from(groups, (_, i) => (i === g ? 1 : 0))
  return {
    boardSdMPa: Math.sqrt(ratio * variance),
    blockSdMPa: Math.sqrt(variance),
    boardShare: ratio / (1 + ratio),
    p: ratio === 0 ? 1 : chiSquareUpperTail(Math.max(fitAt(sums, 0).deviance - deviance, 0), 1) / 2,
    groups: groups.map((group, g) => ({
      group,
      meanMPa: centres[g]! + means[g]!,
      standardErrorMPa: Math.sqrt(variance * reduced.solve(unit(g))[g]!),
    })),
    boards: boards.map((board, k) => {
      const expected = counts[k]!.reduce((sum, count, g) => sum + count * means[g]!, 0)
      return { board, aboveMPa: sizes[k]! === 0 ? 0 : weights[k]! * (boardSums[k]! - expected) }
    }),
  }
}
