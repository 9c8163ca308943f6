import { expect, it } from 'vitest'
import { censoredLine } from '#domain/findings/ageing/censoredLine.ts'
import { agedHeld, agedMonths, agedStrengths } from './agedBlocks.ts'

const rows = agedMonths.map((age) => [1, age])
const start = { parameters: [9.6, -0.07], sigma: 0.4 }

it('is the line of survreg with held values', () => {
  // R 4.2.2: survreg(Surv(y, 1 - held) ~ t, dist = "gaussian")
  const line = censoredLine(rows, agedStrengths, agedHeld, start)!
  expect(line.parameters[0]).toBeCloseTo(9.6738694, 6)
  expect(line.parameters[1]).toBeCloseTo(-0.06579933, 7)
  expect(Math.log(line.sigma)).toBeCloseTo(-0.74093728, 6)
  expect(line.logLikelihood).toBeCloseTo(-10.95474251, 6)
})

it('weighs a failed value whole and a held one less', () => {
  const { curvatures } = censoredLine(rows, agedStrengths, agedHeld, start)!
  for (const [i, { inMean }] of curvatures.entries()) {
    if (agedHeld[i]) expect(inMean).toBeLessThan(1)
    else expect(inMean).toBe(1)
  }
})

it('is none where every value was held', () => {
  expect(
    censoredLine(
      rows,
      agedStrengths,
      agedHeld.map(() => true),
      start,
    ),
  ).toBeNull()
})
