import type { FindingsGroup } from '#contract/findings/procedures.ts'
import { conditionParts, joined } from '../breaks/groupName.ts'

/**
 * What each group is called beside the others: only that in which they differ, its adhesive where they differ in nothing.
 * By their keys; `lengthText` writes a length in mm.
 */
export function tellingNames(
  groups: readonly FindingsGroup[],
  lengthText: (mm: number) => string,
): ReadonlyMap<string, string> {
  const told = apart(
    groups.map((group) => [group.adhesive, ...conditionParts(group, lengthText)]),
    ['adhesive', ...conditionTraits],
  )
  return new Map(groups.map(({ key, adhesive }, at) => [key, told?.own[at] ?? adhesive]))
}

/** What the parts of a condition are called. */
export const conditionTraits = ['joint type', 'gap', 'exposure'] as const

/**
 * Names in parts, of which each part is of the same trait in all: what all of them share, and what tells each from the others; where
 * that is what nobody wrote, that it is not named. null: they differ in nothing.
 */
export function apart(
  names: readonly (readonly string[])[],
  traits: readonly string[],
): { shared: string; own: string[] } | null {
  const [first = []] = names
  const tells = traits.map((_, place) => names.some((parts) => parts[place] !== first[place]))
  if (!tells.includes(true)) return null
  const telling = (parts: readonly string[]) => parts.filter((_, place) => tells[place])
  return {
    shared: joined(first.filter((_, place) => !tells[place])),
    own: names.map((parts) => joined(telling(parts)) || `${telling(traits).join(' and ')} not named`),
  }
}

/** What a group is called beside the others, by its key. */
export function namesOf(
  groups: readonly FindingsGroup[],
  lengthText: (mm: number) => string,
): (group: string) => string {
  const names = tellingNames(groups, lengthText)
  return (group) => names.get(group) ?? group
}
