import { expect, it } from 'vitest'
import type { Archive } from '#archive/archive.ts'
import { calibrationInForce } from '#engine/calibration/calibrationInForce.ts'

const inForceWhere = (decided: number | null) =>
  calibrationInForce({
    calibrationDecided: async () => decided,
    calibration: async (calibrationId: number) => ({ calibrationId }),
  } as unknown as Archive)

it('is the one that was decided on', async () => {
  expect(await inForceWhere(2)).toEqual({ calibrationId: 2 })
})
it('is none where none was decided on', async () => {
  expect(await inForceWhere(null)).toBeNull()
})
