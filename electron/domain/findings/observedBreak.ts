import type { SpecimenFields } from '#contract/specimens/specimen.ts'
import { ageMonths } from '../programme/ageMonths.ts'
import { shearStrengthMPa } from '../strength/strength.ts'
import { naturalKey } from '../text/naturalOrder.ts'
import type { Observation } from './observation.ts'

/** A break of a specimen as an archive holds it, with a load and an area. */
export type ObservedBreak = Pick<
  SpecimenFields,
  'number' | 'adhesive' | 'jointType' | 'bondLineGapMm' | 'exposure' | 'gluedOn'
> & {
  readonly specimenId: number
  /** null: there is no curve, only a peak. */
  readonly breakId: number | null
  readonly startedAt: string
  readonly areaMm2: number
  readonly peakN: number
  readonly woodFailurePercent: number | null
  readonly setAside: string | null
  /** Nobody measured it. */
  readonly simulated: boolean
}

/**
 * Breaks as observations: groups are what was made alike, whatever the case and accents of the names, under the name of the first.
 * `nameOf` puts a group in words. Checked: tests/domain/findings/observedBreak.spec.ts.
 */
export function observedBreaks(
  breaks: readonly ObservedBreak[],
  nameOf: (one: ObservedBreak) => string,
): Observation[] {
  const names = new Map<string, string>()
  return breaks.map((one) => {
    const key = JSON.stringify([...[one.adhesive, one.jointType, one.exposure].map(naturalKey), one.bondLineGapMm])
    const group = names.get(key) ?? nameOf(one)
    names.set(key, group)
    return {
      group,
      ageMonths: one.gluedOn === null ? null : ageMonths(one.gluedOn, one.startedAt),
      specimen: one.number,
      strengthMPa: shearStrengthMPa(one.peakN, one.areaMm2),
      woodFailurePercent: one.woodFailurePercent,
      board: null,
      excludedBecause: one.setAside,
      simulated: one.simulated,
    }
  })
}
