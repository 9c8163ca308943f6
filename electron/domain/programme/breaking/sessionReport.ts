import type { BreakSummary } from '#contract/breaks/break.ts'
import type { Flag } from '#contract/breaks/evaluation.ts'
import type { BreakingMember } from '#contract/programme/breakingProcedures.ts'
import type { SpecimenFields } from '#contract/specimens/specimen.ts'
import { type GroupSummary, groupSummary, usualTerms } from '../../findings/groupSummary.ts'
import { asObserved, type Observation } from '../../findings/observation.ts'
import { esdOutliers } from '../../findings/outliers.ts'
import { median } from '../../numbers/quantile.ts'
import { naturalKey } from '../../text/naturalOrder.ts'

/** What is to be looked at again about a block that was broken. */
export type BreakDoubt =
  | { kind: 'two-results'; results: number }
  | { kind: 'not-assessed' | 'no-area' | 'declared-premature' }
  /** An early drop, at so many percent of the peak (null: not known). */
  | { kind: 'early-drop'; percentOfPeak: number | null }
  | { kind: 'stick-slip' }
  /** Far from the others of its group, whose median is given. */
  | { kind: 'low' | 'high'; strengthMPa: number; medianMPa: number }
  | { kind: 'flag'; flag: Flag }

/** Blocks of a session that differ in nothing that the study controls. */
export type SessionGroup = Pick<SpecimenFields, 'adhesive' | 'jointType' | 'bondLineGapMm' | 'exposure'> & {
  /** As planned; null: no block of a study, or a spare. */
  readonly ageMonths: number | null
  readonly blocks: number
  readonly broken: number
  readonly setAside: number
  /** Strengths and wood failure of those that count, as observed; `n` of them. */
  readonly summary: GroupSummary
}

export type SessionReport = {
  readonly groups: readonly SessionGroup[]
  readonly doubtful: readonly { member: BreakingMember; doubts: readonly BreakDoubt[] }[]
  /** Broken, and without a result that can be relied on. */
  readonly toRepeat: readonly BreakingMember[]
  readonly skipped: readonly BreakingMember[]
  readonly waiting: readonly BreakingMember[]
}

/** With these the peak is a lower limit, or no peak of that block at all. */
const spoilt: readonly Flag[] = ['clipped', 'over-capacity', 'gap-at-peak', 'interrupted', 'recovered']
/** These are said of single blocks; the others hold for the whole bench. */
const worthSaying: readonly Flag[] = [...spoilt, 'no-pre-trigger', 'sampling-too-slow', 'above-verified-range']
/** Below this share of the median of its group a block is pointed out, however few there are. Common practice, no source. */
const lowShare = 0.5
const outlierAlpha = 0.05

/**
 * What a breaking session gave so far: each group as observed, and what is to be looked at or broken again. A block far from the
 * others of its group is found by the generalised ESD test at 5 % (domain/findings/outliers.ts) or is weaker than half of their median.
 */
export function sessionReport(members: readonly BreakingMember[]): SessionReport {
  const groups = [...Map.groupBy(members, groupKey)].sort(([a], [b]) => (a < b ? -1 : 1)).map(([, ofGroup]) => ofGroup)
  const far = new Map(groups.flatMap((ofGroup) => farFromGroup(ofGroup)))
  const broken = members.filter(({ state }) => state === 'broken')
  const doubtful = broken
    .map((member) => ({ member, doubts: [...doubtsOf(member), ...(far.get(member) ?? [])] }))
    .filter(({ doubts }) => doubts.length > 0)
  return {
    groups: groups.map(groupOf),
    doubtful,
    toRepeat: broken.filter(({ specimen: { breakInForce } }) => breakInForce === null || isSpoilt(breakInForce)),
    skipped: members.filter(({ state }) => state === 'skipped'),
    waiting: members.filter(({ state }) => state === 'waiting'),
  }
}

const isSpoilt = ({ flags }: BreakSummary) => flags.some((flag) => spoilt.includes(flag))

function groupKey({ specimen: { fields }, ageMonths }: BreakingMember): string {
  const names = [fields.adhesive, fields.jointType, fields.exposure].map(naturalKey)
  return JSON.stringify([...names, fields.bondLineGapMm, ageMonths])
}

function groupOf(members: readonly BreakingMember[]): SessionGroup {
  const { specimen, ageMonths } = members[0]!
  const { adhesive, jointType, bondLineGapMm, exposure } = specimen.fields
  const counted = members.flatMap((member) => observationOf(member))
  const broken = members.filter(({ state }) => state === 'broken')
  return {
    ...{ adhesive, jointType, bondLineGapMm, exposure, ageMonths },
    blocks: members.length,
    broken: broken.length,
    setAside: broken.filter((one) => one.specimen.breakInForce === null).length,
    summary: groupSummary({ group: '', ageMonths, counted, excluded: 0 }, asObserved, usualTerms),
  }
}

function observationOf({ specimen: { fields, breakInForce } }: BreakingMember): Observation[] {
  if (breakInForce === null || breakInForce.strengthMPa === null) return []
  const { strengthMPa, woodFailurePercent } = breakInForce
  return [
    {
      ...{ group: '', ageMonths: null, specimen: fields.number, board: null, excludedBecause: null },
      ...{ strengthMPa, woodFailurePercent, simulated: fields.demo },
    },
  ]
}

function farFromGroup(members: readonly BreakingMember[]): [BreakingMember, BreakDoubt[]][] {
  const withResult = members.filter((member) => observationOf(member).length > 0)
  const strengths = withResult.map((member) => observationOf(member)[0]!.strengthMPa)
  if (strengths.length < 3) return []
  const medianMPa = median(strengths)
  const outlying = new Set(esdOutliers(strengths, outlierAlpha).map(({ index }) => index))
  return withResult.flatMap((member, at): [BreakingMember, BreakDoubt[]][] => {
    const strengthMPa = strengths[at]!
    if (!outlying.has(at) && strengthMPa >= lowShare * medianMPa) return []
    return [[member, [{ kind: strengthMPa < medianMPa ? 'low' : 'high', strengthMPa, medianMPa }]]]
  })
}

function doubtsOf({ specimen, breaks }: BreakingMember): BreakDoubt[] {
  const { results, breakInForce } = specimen
  const doubts: BreakDoubt[] = results > 1 ? [{ kind: 'two-results', results }] : []
  if (breakInForce === null) return doubts
  if (breakInForce.flags.includes('premature-failure')) doubts.push({ kind: 'declared-premature' })
  const events = breaks.find(({ summary }) => summary.breakId === breakInForce.breakId)?.events ?? []
  for (const { kind, percentOfPeak } of events) {
    if (kind === 'pop-in') doubts.push({ kind: 'early-drop', percentOfPeak })
    if (kind === 'stick-slip' && !doubts.some((one) => one.kind === 'stick-slip')) doubts.push({ kind: 'stick-slip' })
  }
  for (const flag of breakInForce.flags) if (worthSaying.includes(flag)) doubts.push({ kind: 'flag', flag })
  if (specimen.fields.areaMm2 === null) doubts.push({ kind: 'no-area' })
  if (breakInForce.woodFailurePercent === null) doubts.push({ kind: 'not-assessed' })
  return doubts
}
