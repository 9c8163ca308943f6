import type { ByteSource } from '#acquisition/byteSource.ts'
import type { VirtualSource } from '#acquisition/virtual/virtualSource.ts'
import type { LineFormatChoice, SourceChoice } from '#contract/bench/source.ts'
import type { DetectionSettings } from '#contract/breaks/detection.ts'
import type { Calibration } from '#contract/calibration/calibration.ts'
import type { ForceScale, ReadingUnit } from '#contract/calibration/forceScale.ts'
import type { Preferences } from '#contract/settings/settings.ts'
import { calibratedScale, calibrationHolds } from '#domain/calibration/scale/calibratedScale.ts'

/** What is known of a device before it has said anything. */
export type SourceFacts = {
  lineFormat: LineFormatChoice
  scaleFor(unit: ReadingUnit): ForceScale
  settings: DetectionSettings
}

/** A source that knows its own cell, and so needs nothing typed. */
export function isVirtual(source: ByteSource | null): source is VirtualSource {
  return source !== null && 'loadNow' in source && 'nPerCount' in source
}

/**
 * The facts of a source under the preferences in force: the calibration where one holds, else what the person typed, or the
 * virtual amplifier's own data.
 */
export function sourceFacts(
  choice: SourceChoice | null,
  source: ByteSource | null,
  preferences: Preferences,
  calibration: Calibration | null,
): SourceFacts {
  const facts = uncalibratedFacts(choice, source, preferences)
  const device = isVirtual(source) ? 'virtual' : 'serial'
  return {
    ...facts,
    scaleFor: (unit) =>
      calibration !== null && calibrationHolds(calibration, device, unit)
        ? calibratedScale(calibration)
        : facts.scaleFor(unit),
  }
}

function uncalibratedFacts(
  choice: SourceChoice | null,
  source: ByteSource | null,
  preferences: Preferences,
): SourceFacts {
  const detection = { ...preferences.detection, startThresholdN: null }
  if (isVirtual(source)) {
    const { nPerCount, capacityN, endCodes, lineFormat } = source
    return {
      lineFormat,
      scaleFor: () => ({ kind: 'uncalibrated-scale', nPerCount }),
      settings: { ...detection, capacityN, endCodes: [...endCodes] },
    }
  }
  const { nPerCount } = preferences
  return {
    lineFormat: choice?.kind === 'serial' ? choice.lineFormat : { name: 'number', columns: [] },
    scaleFor: (unit) =>
      unit !== 'counts'
        ? { kind: 'device-unit', unit }
        : nPerCount === null || nPerCount === 0
          ? { kind: 'none' }
          : { kind: 'uncalibrated-scale', nPerCount },
    settings: { ...detection, capacityN: preferences.capacityN },
  }
}
