import type { BreakGroup } from '#domain/strength/breakGroup.ts'

/** What the breaks of a group have in common, in words. */
export function groupName(common: NonNullable<BreakGroup['common']>): string {
  return `${madeAlike(common)}, ${ageInWords(common.ageMonths)}`
}

/** How the blocks of a group were made and kept, in words, whatever their age. */
export function madeAlike({
  adhesive,
  jointType,
  bondLineGapMm,
  exposure,
}: Omit<NonNullable<BreakGroup['common']>, 'ageMonths'>): string {
  return [adhesive, jointType, gapInWords(bondLineGapMm), exposure].filter((words) => words !== '').join(', ')
}

function gapInWords(gapMm: number | null): string {
  if (gapMm === null) return 'gap not measured'
  return gapMm === 0 ? 'tight joint' : `gap ${gapMm} mm`
}

function ageInWords(months: number | null): string {
  if (months === null) return 'age not known'
  return months === 1 ? '1 month old' : `${months} months old`
}
