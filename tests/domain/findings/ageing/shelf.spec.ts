import { describe, expect, it } from 'vitest'
import { bestMove, seenAt, sightOf, soonestMove } from '#domain/findings/ageing/shelf.ts'

const certainty = { confidence: 0.95, power: 0.8 }
const pulls = [0, 12, 24, 120, 240].map((ageMonths) => ({ ageMonths, blocks: 12, isDone: ageMonths <= 24 }))

describe('what a shelf can still show', () => {
  // R 4.2.2: x <- rep(c(0, 1, 2), each = 12); n <- 36; sx <- sqrt(sum((x - mean(x))^2)); power of the slope's t test
  //   f <- function(d) { t <- qt(.975, n - 2); 1 - pt(t, n - 2, d) + pt(-t, n - 2, d) - .8 }
  //   d <- uniroot(f, c(0, 10), tol = 1e-12)$root; 15 * d / sx
  it('is the slope that R finds with power 0.8 after the third pull', () => {
    const [, third] = sightOf(pulls.slice(0, 3), 15, certainty)
    expect(third!.ageMonths).toBe(24)
    expect(third!.changePercentPerYear).toBeCloseTo(8.8300702452, 6)
    expect(third!.changePercent).toBeCloseTo(2 * 8.8300702452, 6)
  })

  it('is as R says for all five pulls', () => {
    expect(sightOf(pulls, 15, certainty).at(-1)!.changePercentPerYear).toBeCloseTo(0.7279611586, 7)
  })

  it('is nothing after one age, and sharpens with every pull', () => {
    const seen = sightOf(pulls, 15, certainty)
    expect(seen.map(({ ageMonths }) => ageMonths)).toEqual([12, 24, 120, 240])
    for (let i = 1; i < seen.length; i++)
      expect(seen[i]!.changePercentPerYear).toBeLessThan(seen[i - 1]!.changePercentPerYear)
  })

  it('grows sharper with blocks kept for the last pull', () => {
    const move = bestMove(pulls, 15, certainty, 4)!
    expect(move).toMatchObject({ fromMonths: 120, toMonths: 240, blocks: 8 })
    expect(move.afterPercentPerYear).toBeLessThan(move.beforePercentPerYear)
  })

  it('moves what all moves, tried one by one in numpy and scipy, show to be best: not always the youngest pull', () => {
    // numpy 2.4.6 and scipy 1.17.1: each of the ten moves of all blocks but three to a later pull, the noncentral t by Gauss-Legendre
    // quadrature over S, the sum of squares over single blocks. Nine from 36 months: 1.34093; from 60: 1.35807; from 12: 1.37938.
    const shelf = [
      [0, 12],
      [6, 12],
      [12, 12],
      [24, 8],
      [36, 12],
      [60, 12],
      [120, 6],
    ].map(([ageMonths, blocks]) => ({ ageMonths: ageMonths!, blocks: blocks!, isDone: ageMonths! < 12 }))
    const move = bestMove(shelf, 15, certainty, 3)!
    expect(move).toMatchObject({ fromMonths: 36, toMonths: 120, blocks: 9 })
    expect(move.beforePercentPerYear).toBeCloseTo(1.7885540408657539, 10)
    expect(move.afterPercentPerYear).toBeCloseTo(1.3409333749425425, 10)
  })

  it('cannot be moved where every pull is done, or only one is to come', () => {
    expect(bestMove(pulls.slice(0, 3), 15, certainty, 4)).toBeNull()
    expect(bestMove(pulls.slice(0, 4), 15, certainty, 4)).toBeNull()
  })

  it('shows a change after the first pull whose smallest slope is no larger', () => {
    const slopes = sightOf(pulls, 15, certainty)
    for (const { ageMonths, changePercentPerYear } of slopes) {
      expect(seenAt(pulls, 15, certainty, changePercentPerYear)).toBe(ageMonths)
      expect(seenAt(pulls, 15, certainty, changePercentPerYear * 1.001)).toBe(ageMonths)
    }
    expect(seenAt(pulls, 15, certainty, 0.7)).toBeNull()
  })

  it('shows a change sooner with the right move, and names none where no move does', () => {
    const at = (percentPerYear: number) => soonestMove(pulls, 15, certainty, { least: 4, percentPerYear })
    const moved = pulls.map((pull) => ({ ...pull, blocks: { 120: 4, 240: 20 }[pull.ageMonths] ?? pull.blocks }))
    const reached = sightOf(moved, 15, certainty).at(-1)!.changePercentPerYear
    expect(at(reached)).toMatchObject({ fromMonths: 120, toMonths: 240, blocks: 8, seenMonths: 240 })
    expect(at(reached)!.afterPercentPerYear).toBeCloseTo(reached, 12)
    // Seen with the last pull as it is planned: no move of these two brings it before
    expect(at(0.75)).toBeNull()
    expect(at(0.1)).toBeNull()
  })

  it('shows a change at an earlier pull where blocks of a young one are brought there', () => {
    const many = [0, 12, 24, 60, 120, 240].map((ageMonths) => ({ ageMonths, blocks: 12, isDone: ageMonths === 0 }))
    const planned = sightOf(many, 15, certainty)
    const wanted = planned.find(({ ageMonths }) => ageMonths === 120)!.changePercentPerYear * 0.97
    expect(seenAt(many, 15, certainty, wanted)).toBe(240)
    const move = soonestMove(many, 15, certainty, { least: 3, percentPerYear: wanted })!
    expect(move.seenMonths).toBe(120)
    expect(move.toMonths).toBe(120)
  })
})
