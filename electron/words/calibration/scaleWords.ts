import type { ForceScale } from '#contract/calibration/forceScale.ts'
import type { Quantity } from '../units/quantities.ts'

/** True unless the force rests on a calibration. */
export function isUncalibrated(kind: ForceScale['kind']): boolean {
  return kind !== 'calibration'
}

/** What a force without a calibration rests on, in words. */
export function uncalibratedWords(
  scale: Exclude<ForceScale, { kind: 'calibration' }>,
  forcePerCount: Quantity,
): string {
  switch (scale.kind) {
    case 'none':
      return 'no scale: readings are counts'
    case 'uncalibrated-scale':
      return `typed scale, ${forcePerCount.text(scale.nPerCount)}`
    case 'device-unit':
      return `the amplifier sends ${scale.unit}`
  }
}

/** What the force rests on, in words; `name` is the name of its calibration where that is known. */
export function scaleWords(scale: ForceScale, forcePerCount: Quantity, name: string | null = null): string {
  if (scale.kind === 'calibration')
    return name === null ? `calibration ${scale.calibrationId}` : `calibration “${name}”`
  return scale.kind === 'none'
    ? uncalibratedWords(scale, forcePerCount)
    : `uncalibrated: ${uncalibratedWords(scale, forcePerCount)}`
}
