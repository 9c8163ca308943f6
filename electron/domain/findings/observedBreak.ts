import type { SpecimenFields } from '#contract/specimens/specimen.ts'
import { ageMonths } from '../programme/ageMonths.ts'
import { traitsKey } from '../programme/study/plannedAges.ts'
import { shearStrengthMPa } from '../strength/strength.ts'
import type { Observation } from './observation.ts'

/** A break of a specimen as an archive holds it, with a load and an area; or a result without a curve, which may have its strength alone. */
export type ObservedBreak = Pick<
  SpecimenFields,
  'number' | 'adhesive' | 'jointType' | 'bondLineGapMm' | 'exposure' | 'gluedOn'
> & {
  readonly specimenId: number
  /** The study that it is a block of; null: of none. */
  readonly studyId: number | null
  /** null: there is no curve, only a peak. */
  readonly breakId: number | null
  readonly startedAt: string
  readonly areaMm2: number | null
  readonly peakN: number | null
  /** As it was given, where there is no load or no area. */
  readonly strengthMPa: number | null
  readonly woodFailurePercent: number | null
  readonly setAside: string | null
  /** Nobody measured it. */
  readonly simulated: boolean
  /** As it was given; null: it follows from the two days. */
  readonly ageMonths: number | null
  /** The age of the pull of its study in which it was broken; null: in none. */
  readonly pullAgeMonths: number | null
  readonly board: string | null
}

/**
 * Breaks as observations: groups are what was made alike, whatever the case and accents of the names, under the name of the first;
 * blocks of one pull are of its age, a few weeks early or late.
 * `nameOf` puts a group in words. Checked: tests/domain/findings/observedBreak.spec.ts.
 */
export function observedBreaks(
  breaks: readonly ObservedBreak[],
  nameOf: (one: ObservedBreak) => string,
): Observation[] {
  const names = new Map<string, string>()
  return breaks.map((one) => {
    const key = traitsKey(one)
    const group = names.get(key) ?? nameOf(one)
    names.set(key, group)
    const ageAtBreakMonths = one.ageMonths ?? (one.gluedOn === null ? null : ageMonths(one.gluedOn, one.startedAt))
    return {
      group,
      ageMonths: one.pullAgeMonths ?? ageAtBreakMonths,
      ageAtBreakMonths,
      specimen: one.number,
      strengthMPa: strengthOf(one),
      woodFailurePercent: one.woodFailurePercent,
      board: one.board === '' ? null : one.board,
      excludedBecause: one.setAside,
      simulated: one.simulated,
    }
  })
}

function strengthOf({ peakN, areaMm2, strengthMPa }: ObservedBreak): number {
  if (peakN !== null && areaMm2 !== null) return shearStrengthMPa(peakN, areaMm2)
  if (strengthMPa === null) throw new RangeError('observedBreaks requires a load with an area, or a strength')
  return strengthMPa
}
