import { describe, expect, it } from 'vitest'
import { type BoardBlock, boardEffect } from '#domain/findings/boardEffect.ts'

// Dyestuff: yields of six batches, Davies and Goldsmith, Statistical Methods in Research and Production, 1972, table 6.3 (as in R lme4:
// REML batch SD 42.00, residual 49.51, mean 1527.50 with standard error 19.38).
const yields: Record<string, number[]> = {
  A: [1545, 1440, 1440, 1520, 1580],
  B: [1540, 1555, 1490, 1560, 1495],
  C: [1595, 1550, 1605, 1510, 1560],
  D: [1445, 1440, 1595, 1465, 1545],
  E: [1595, 1630, 1515, 1635, 1625],
  F: [1520, 1455, 1450, 1480, 1445],
}
const dyestuff: BoardBlock[] = Object.entries(yields).flatMap(([board, values]) =>
  values.map((strengthMPa) => ({ group: 'all', board, strengthMPa })),
)

describe('boards as a random effect', () => {
  it('spread as the batches of dyestuff', () => {
    const found = boardEffect(dyestuff)!
    expect(found.boardSdMPa).toBeCloseTo(42.0, 2)
    expect(found.blockSdMPa).toBeCloseTo(49.51, 2)
    expect(found.groups[0]!.meanMPa).toBeCloseTo(1527.5, 9)
    expect(found.groups[0]!.standardErrorMPa).toBeCloseTo(19.38, 2)
    expect(found.p).toBeLessThan(0.05)
  })

  it('lie above each other less than their means do', () => {
    const found = boardEffect(dyestuff)!
    // (batch mean - 1527.5) drawn by 5 x 1764.05/(2451.25 + 5 x 1764.05) = 0.7825
    expect(found.boards.find(({ board }) => board === 'F')!.aboveMPa).toBeCloseTo(0.7825 * (1470 - 1527.5), 1)
  })

  it('are the same however far apart the groups lie', () => {
    const groups = (apart: number) =>
      dyestuff.map(({ board, strengthMPa }, i) => {
        const group = i % 2
        return { group: String(group), board, strengthMPa: strengthMPa + apart * group }
      })
    const [near, far] = [boardEffect(groups(0))!, boardEffect(groups(1e9))!]
    expect(far.boardSdMPa).toBeCloseTo(near.boardSdMPa, 4)
    expect(far.blockSdMPa).toBeCloseTo(near.blockSdMPa, 4)
    expect(far.groups[1]!.meanMPa - 1e9).toBeCloseTo(near.groups[1]!.meanMPa, 4)
  })

  it('do not spread where they differ by less than their blocks', () => {
    const alike = [1, 2, 3, 1, 2, 3].map((strengthMPa, i) => ({ group: 'a', board: `${i % 2}`, strengthMPa }))
    expect(boardEffect(alike)).toMatchObject({ boardSdMPa: 0, p: 1, boardShare: 0 })
  })

  it.each([
    ['one board', [1, 2, 3].map((strengthMPa) => ({ group: 'a', board: '1', strengthMPa }))],
    ['a board for each group', [1, 2, 3, 4].map((y, i) => ({ group: `${i % 2}`, board: `${i % 2}`, strengthMPa: y }))],
    ['one block of each board', [1, 3, 2, 5].map((strengthMPa, i) => ({ group: 'a', board: `${i}`, strengthMPa }))],
    ['blocks all alike', [5, 5, 5, 5].map((y, i) => ({ group: 'a', board: `${i % 2}`, strengthMPa: y }))],
  ])('cannot be told with %s', (_name, blocks) => {
    expect(boardEffect(blocks)).toBeNull()
  })
})
