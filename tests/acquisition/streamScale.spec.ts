import { expect, test } from 'vitest'
import { createStreamScale } from '#acquisition/streamScale.ts'

test('takes readings as they are until their unit is known, and counts that as force', () => {
  const scale = createStreamScale(() => ({ kind: 'none' }))
  expect(scale.unit()).toBeNull()
  expect(scale.hasForce()).toBe(true)
  expect(scale.toForce()(7)).toBe(7)
})

test('asks for the scale of the unit that has come', () => {
  const scale = createStreamScale((unit) =>
    unit === 'counts' ? { kind: 'uncalibrated-scale', nPerCount: 0.5 } : { kind: 'device-unit', unit },
  )
  scale.begin('counts')
  expect(scale.toForce()(200)).toBe(100)
  scale.begin('kN')
  expect(scale.unit()).toBe('kN')
  expect(scale.toForce()(2)).toBe(2000)
})

test('knows no force without a scale, and gives the readings themselves', () => {
  const scale = createStreamScale(() => ({ kind: 'none' }))
  scale.begin('counts')
  expect(scale.hasForce()).toBe(false)
  expect(scale.toForce()(200)).toBe(200)
})
