import type { FindingChanges, KeptBlock, KeptFindingRow } from '#contract/findings/keptFinding.ts'
import { countOf } from '../units/counts.ts'
import type { Quantity } from '../units/quantities.ts'
import { dayWords } from '../units/times.ts'
import { listed } from './answerWords.ts'
import { tornWoodWords } from './stripWords.ts'

/** Who kept a finding when, and why where that was said. */
export function keptWords({ by, recordedAt, reason, revision }: KeptFindingRow): string {
  const who = by === '' ? '' : ` by ${by}`
  const why = reason === '' ? '' : `: ${reason}`
  return `kept ${dayWords(recordedAt)}${who}${revision === 1 ? '' : `, version ${revision}`}${why}`
}

/** Whether a finding still rests on what it did when it was kept. */
export function standsWords({ isStale, blocks }: KeptFindingRow): string {
  return isStale ? 'stale: its results changed since' : `rests on the same ${countOf(blocks, 'result')} as then`
}

/** What became of the results of a finding since. */
export function changesWords({ came, went, changed }: FindingChanges): string {
  const parts = [
    ...(came.length === 0 ? [] : [`${countOf(came.length, 'result')} came`]),
    ...(went.length === 0 ? [] : [`${countOf(went.length, 'result')} went`]),
    ...(changed.length === 0 ? [] : [`${countOf(changed.length, 'result')} changed`]),
  ]
  return `Since then ${parts.length === 0 ? 'nothing changed' : listed(parts)}.`
}

/** One result as a finding knew it: strength, torn wood, and why it is left out. */
export function keptBlockWords(block: KeptBlock, strength: Quantity): string {
  const { strengthMPa, woodFailurePercent, excludedBecause } = block
  const out = excludedBecause === null ? '' : `, left out: ${excludedBecause}`
  return `${strength.text(strengthMPa)}, ${tornWoodWords(woodFailurePercent)}${out}`
}

/** What is another in a result than it was, each with what it was before. */
export function changedBlockWords(before: KeptBlock, now: KeptBlock, strength: Quantity): string {
  const parts: string[] = []
  const [was, is] = [keptBlockWords(before, strength), keptBlockWords(now, strength)]
  if (was !== is) parts.push(`${is}; it was ${was}`)
  else if (before.strengthMPa !== now.strengthMPa) parts.push(`${is}, changed by less than is shown`)
  if (before.group !== now.group || before.ageMonths !== now.ageMonths) parts.push('it belongs to another group')
  if (before.number !== now.number) parts.push(`its number was ${before.number}`)
  return parts.join('; ')
}

/** How many findings are kept, and how many of them no longer rest on what they did. */
export function keptSummary(rows: readonly KeptFindingRow[]): string {
  const stale = rows.filter(({ isStale }) => isStale).length
  return `Kept findings: ${rows.length}${stale === 0 ? '' : `, ${stale} of them stale`}`
}
