import { taredForce } from '#domain/calibration/scale/forceScale.ts'
import type { DeviceLink } from './device/deviceLink.ts'

/** How far a reading of the device lies from the zero of the bench, N; null: there is no zero or no scale. */
export function taredN(link: Pick<DeviceLink, 'tare' | 'scale' | 'readingUnit'>, reading: number): number | null {
  const tare = link.tare()
  if (tare === null) return null
  const { force, unit } = taredForce(
    Float64Array.of(reading),
    link.scale(),
    link.readingUnit() ?? 'counts',
    tare.offset,
  )
  return unit === 'N' ? force[0]! : null
}
