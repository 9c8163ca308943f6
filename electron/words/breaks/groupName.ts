import type { GroupTraits } from '#contract/breaks/breakGroup.ts'

/** What the breaks of a group have in common, in words; `lengthText` writes a length in mm. */
export function groupName(common: GroupTraits, lengthText: (mm: number) => string): string {
  return `${madeAlike(common, lengthText)}, ${ageInWords(common.ageMonths)}`
}

/** How the blocks of a group were made and kept, in words, whatever their age; `lengthText` writes a length in mm. */
export function madeAlike(common: Omit<GroupTraits, 'ageMonths'>, lengthText: (mm: number) => string): string {
  return joined([common.adhesive, ...conditionParts(common, lengthText)])
}

/** How blocks were made and kept, part by part; '': nobody wrote it. */
export function conditionParts(
  { jointType, bondLineGapMm, exposure }: Pick<GroupTraits, 'jointType' | 'bondLineGapMm' | 'exposure'>,
  lengthText: (mm: number) => string,
): string[] {
  return [jointType, gapInWords(bondLineGapMm, lengthText), exposure]
}

/** Parts of a name as one. */
export function joined(parts: readonly string[]): string {
  return parts.filter((part) => part !== '').join(', ')
}

/** How thick the adhesive lies between the faces, in words. */
export function gapInWords(gapMm: number | null, lengthText: (mm: number) => string): string {
  if (gapMm === null) return 'gap not measured'
  return gapMm === 0 ? 'tight joint' : `gap ${lengthText(gapMm)}`
}

/** How old blocks are, in words. */
export function ageInWords(months: number | null): string {
  if (months === null) return 'age not known'
  return months === 1 ? '1 month old' : `${months} months old`
}
