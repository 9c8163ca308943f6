import type { Quantity } from '../units/quantities.ts'

/** Bonded areas outside of this, mm², are asked about: 4 mm x 5 mm to 200 mm x 200 mm. Common practice, no source. */
const usualAreaMm2 = { least: 20, most: 40_000 }
/** An area so many times larger or smaller than length times width is asked about: a scarf stays below, a wrong unit does not. */
const farFromOverlap = 10

/**
 * Strengths outside of this, MPa, are asked about. The strongest woods of the Wood Handbook (FPL-GTR-190, table 5-5b, shear
 * parallel to grain at 12 %: 2,190 lbf/in², 15.1 MPa) stay below half of the upper one; the lower one is common practice.
 */
const usualStrengthMPa = { least: 0.1, most: 31 }

const lookAtUnits = 'Look at the numbers and their units.'

/** What is asked about a bonded area that is hardly one; null: nothing. Sides that are not known are null. */
export function areaQuestion(
  { lengthMm, widthMm, areaMm2 }: { lengthMm: number | null; widthMm: number | null; areaMm2: number | null },
  area: Quantity,
): string | null {
  if (areaMm2 === null) return null
  const overlapMm2 = lengthMm === null || widthMm === null ? areaMm2 : lengthMm * widthMm
  const times = areaMm2 / overlapMm2
  if (times > farFromOverlap || times < 1 / farFromOverlap)
    return `Is that right? Length times width is ${area.text(overlapMm2)}, and the area is ${area.text(areaMm2)}. ${lookAtUnits}`
  if (areaMm2 < usualAreaMm2.least)
    return `Is that right? ${area.text(areaMm2)} is smaller than a joint that can be handled. ${lookAtUnits}`
  if (areaMm2 > usualAreaMm2.most)
    return `Is that right? ${area.text(areaMm2)} is larger than a joint that a small press can break. ${lookAtUnits}`
  return null
}

/** Where a strength of the bench may be wrong, and one that a table gives. */
const strengthCures = {
  bench: 'Look at the bonded area of the specimen and its unit, and at the scale.',
  table: 'Look at the units of the load and of the area.',
} as const

/** What is asked about a shear strength that is hardly one; null: nothing. */
export function strengthQuestion(
  strengthMPa: number | null,
  strength: Quantity,
  from: keyof typeof strengthCures = 'bench',
): string | null {
  if (strengthMPa === null) return null
  const cure = strengthCures[from]
  if (strengthMPa > usualStrengthMPa.most)
    return `Is that right? ${strength.text(strengthMPa)} is more than twice what the strongest wood bears. ${cure}`
  if (strengthMPa < usualStrengthMPa.least)
    return `Is that right? ${strength.text(strengthMPa)} is next to nothing for a glued joint. ${cure}`
  return null
}
