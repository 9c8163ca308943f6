import { expect, it } from 'vitest'
import type { Archive } from '#archive/archive.ts'
import { calibrationInForce } from '#engine/calibration/calibrationInForce.ts'

const inForceAfter = (...calibrationIds: (number | null)[]) =>
  calibrationInForce({
    calibrationDecisions: async () => calibrationIds.map((calibrationId) => ({ calibrationId })),
    calibration: async (calibrationId: number) => ({ calibrationId }),
  } as unknown as Archive)

it('is the one of the newest decision, not the newest or highest one', async () => {
  expect(await inForceAfter(5, 2)).toEqual({ calibrationId: 2 })
})
it('is none before any decision, and after one to use none', async () => {
  expect(await inForceAfter()).toBeNull()
  expect(await inForceAfter(5, null)).toBeNull()
})
