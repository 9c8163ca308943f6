import { expect, it } from 'vitest'
import { countedStrengthMPa } from '#renderer/pages/countedStrength.ts'

it('counts a strength for a break alone', () => {
  expect(countedStrengthMPa({ outcome: 'break', strengthMPa: 8 })).toBe(8)
  expect(countedStrengthMPa({ outcome: 'unloading', strengthMPa: 8 })).toBeNull()
  expect(countedStrengthMPa({ outcome: null, strengthMPa: null })).toBeNull()
})
