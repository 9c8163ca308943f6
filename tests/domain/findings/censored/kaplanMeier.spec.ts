import { expect, it } from 'vitest'
import { kaplanMeier } from '#domain/findings/censored/kaplanMeier.ts'

it('has the survivals of the handbook, with Greenwood', () => {
  // NIST/SEMATECH e-Handbook 8.2.1.5; standard errors by R survfit
  const found = kaplanMeier({
    failed: [181, 122, 10, 32, 56, 98],
    censored: [50, 100, 125, 150, ...new Array<number>(10).fill(200)],
  })
  expect(found.strengthMPa).toEqual([10, 32, 56, 98, 122, 181])
  expect(found.atRisk).toEqual([20, 19, 17, 16, 14, 11])
  const survival = [0.95, 0.9, 0.847058824, 0.794117647, 0.737394958, 0.670359053]
  const errors = [0.048733972, 0.067082039, 0.08138832, 0.09192128, 0.101356803, 0.112140686]
  for (const [i, value] of survival.entries()) {
    expect(found.survival[i]).toBeCloseTo(value, 8)
    expect(found.standardError[i]).toBeCloseTo(errors[i]!, 8)
  }
})

it('counts wood of the same strength as still at risk, and joins equal failures', () => {
  const { strengthMPa, atRisk, survival } = kaplanMeier({ failed: [5, 5, 7], censored: [5, 6] })
  expect(strengthMPa).toEqual([5, 7])
  expect(atRisk).toEqual([5, 1])
  expect(survival[0]).toBeCloseTo(0.6, 12)
})

it('has no standard error where nothing survives', () => {
  expect(kaplanMeier({ failed: [1, 2], censored: [] }).standardError.map((value) => value === null)).toEqual([
    false,
    true,
  ])
})
