import type { GroupTraits } from '#contract/breaks/breakGroup.ts'
import type { Outcome } from '#contract/breaks/evaluation.ts'
import type { SpecimenFields } from '#contract/specimens/specimen.ts'
import { ageMonths } from '../programme/ageMonths.ts'
import { naturalKey } from '../text/naturalOrder.ts'

/** What a group has in common, and its breaks in natural order of specimen number. */
export type BreakGroup = {
  /** null: the break belongs to no specimen and is alone in its group. */
  common: GroupTraits | null
  breakIds: number[]
}

/** A break with what its specimen is. */
export type GroupMember = Pick<
  SpecimenFields,
  'number' | 'adhesive' | 'jointType' | 'bondLineGapMm' | 'exposure' | 'gluedOn'
> & {
  readonly breakId: number
  readonly startedAt: string
  /** As it counts now, a person's word included. */
  readonly outcome: Outcome | null
  /** The age of the pull of its study in which it was broken; null: in none. */
  readonly pullAgeMonths: number | null
}

/**
 * The breaks among the candidates whose specimens agree with that of the given break in adhesive, joint type, bond line gap,
 * exposure and age: that of the pull in which each was broken, else in whole months. Names agree whatever their case, accents and
 * leading zeros; two gaps, or two ages, that are not known agree. Those that ended in a break, by the program or by a person's
 * word, the ones set aside and the given one among them. Checked: tests/domain/strength/breakGroup.spec.ts.
 */
export function groupOf(own: GroupMember, candidates: readonly GroupMember[]): BreakGroup {
  const { adhesive, jointType, bondLineGapMm, exposure } = own
  const identity = identityOf(own)
  const members = candidates.filter(
    (one) => one.breakId === own.breakId || (one.outcome === 'break' && identityOf(one) === identity),
  )
  return {
    common: { adhesive, jointType, bondLineGapMm, exposure, ageMonths: ageOf(own) },
    breakIds: members
      .map(({ breakId, number }) => ({ breakId, key: naturalKey(number) }))
      .sort((a, b) => (a.key === b.key ? a.breakId - b.breakId : a.key < b.key ? -1 : 1))
      .map(({ breakId }) => breakId),
  }
}

function identityOf(member: GroupMember): string {
  const names = [member.adhesive, member.jointType, member.exposure].map(naturalKey)
  return JSON.stringify([...names, member.bondLineGapMm, ageOf(member)])
}

function ageOf({ gluedOn, startedAt, pullAgeMonths }: GroupMember): number | null {
  return pullAgeMonths ?? (gluedOn === null ? null : ageMonths(gluedOn, startedAt))
}
