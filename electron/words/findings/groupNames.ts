import type { FindingsGroup } from '#contract/findings/procedures.ts'
import { gapInWords } from '../breaks/groupName.ts'

/**
 * What each group is called beside the others: only that in which they differ, its adhesive where they differ in nothing.
 * By their keys; `lengthText` writes a length in mm.
 */
export function tellingNames(
  groups: readonly FindingsGroup[],
  lengthText: (mm: number) => string,
): ReadonlyMap<string, string> {
  const parts = groups.map(({ key, adhesive, jointType, bondLineGapMm, exposure }) => ({
    key,
    words: [adhesive, jointType, gapInWords(bondLineGapMm, lengthText), exposure],
  }))
  const first = parts[0]?.words ?? []
  const tells = first.map((word, place) => parts.some(({ words }) => words[place] !== word))
  if (!tells.includes(true)) tells[0] = true
  return new Map(
    parts.map(({ key, words }) => [key, words.filter((word, place) => tells[place] && word !== '').join(', ')]),
  )
}

/** What a group is called beside the others, by its key. */
export function namesOf(
  groups: readonly FindingsGroup[],
  lengthText: (mm: number) => string,
): (group: string) => string {
  const names = tellingNames(groups, lengthText)
  return (group) => names.get(group) ?? group
}
