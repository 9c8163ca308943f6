import { expect, it } from 'vitest'
import { differenceCurve } from '#domain/programme/study/differenceCurve.ts'

const pair = { comparison: 'pair', groups: 2, confidence: 0.95 } as const

it('is at every number of blocks that of power.t.test', () => {
  const curve = differenceCurve(pair, 0.8, 10, 30)
  // R 4.2.2: 10 * power.t.test(n, power = 0.8, strict = TRUE, tol = 1e-12)$delta
  for (const [blocks, percent] of [
    [3, 30.7089226636009],
    [4, 23.8075421327031],
    [12, 11.9681191375296],
    [30, 7.35621069597389],
  ])
    expect(curve.find((point) => point.blocks === blocks)!.differencePercent).toBeCloseTo(percent!, 6)
})

it('falls with every block', () => {
  const curve = differenceCurve(pair, 0.8, 10, 30).map(({ differencePercent }) => differencePercent)
  expect(curve).toHaveLength(28)
  expect(curve).toEqual(curve.toSorted((one, other) => other - one))
})
