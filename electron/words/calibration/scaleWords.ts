import type { ForceScale } from '#contract/calibration/forceScale.ts'

/** True unless the force rests on a calibration. */
export function isUncalibrated(kind: ForceScale['kind']): boolean {
  return kind !== 'calibration'
}

/** What the force rests on, in words; `name` is the name of its calibration where that is known. */
export function scaleWords(scale: ForceScale, name: string | null = null): string {
  switch (scale.kind) {
    case 'none':
      return 'no scale: readings are counts'
    case 'uncalibrated-scale':
      return `uncalibrated: typed scale, ${Number(scale.nPerCount.toPrecision(6))} N per count`
    case 'device-unit':
      return `uncalibrated: the amplifier sends ${scale.unit}`
    case 'calibration':
      return name === null ? `calibration ${scale.calibrationId}` : `calibration “${name}”`
  }
}
