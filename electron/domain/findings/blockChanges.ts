import type { FindingChanges, KeptBlock } from '#contract/findings/keptFinding.ts'
import { canonicalJson } from '../text/canonicalJson.ts'

/** What a finding keeps of blocks, in an order of its own: by specimen, then by break. */
export function keptBlocksOf(blocks: readonly KeptBlock[]): KeptBlock[] {
  return blocks
    .map(({ specimenId, breakId, number, group, ageMonths, strengthMPa, woodFailurePercent, excludedBecause }) => ({
      ...{ specimenId, breakId, number, group, ageMonths, strengthMPa, woodFailurePercent, excludedBecause },
    }))
    .sort((one, other) => one.specimenId - other.specimenId || (one.breakId ?? 0) - (other.breakId ?? 0))
}

/** Which results came, went and changed between then and now. Checked: tests/domain/findings/blockChanges.spec.ts. */
export function blockChanges(then: readonly KeptBlock[], now: readonly KeptBlock[]): FindingChanges {
  const keyOf = ({ specimenId, breakId }: KeptBlock) => `${specimenId} ${breakId}`
  const before = new Map(then.map((one) => [keyOf(one), one]))
  const after = new Set(now.map(keyOf))
  return {
    came: now.filter((one) => !before.has(keyOf(one))),
    went: then.filter((one) => !after.has(keyOf(one))),
    changed: now.flatMap((one) => {
      const was = before.get(keyOf(one))
      return was === undefined || canonicalJson(was) === canonicalJson(one) ? [] : [{ before: was, now: one }]
    }),
  }
}
