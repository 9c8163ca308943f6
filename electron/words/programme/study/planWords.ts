import type { ArchiveVariation } from '#contract/programme/studyRecord.ts'
import type { PlanFigures } from '#domain/programme/study/planFigures.ts'
import { countOf } from '../../units/counts.ts'
import { percentWords, writeSignificant } from '../../units/numbers.ts'

/** What a plan shows, in sentences, the plainest first. */
export function planSentences(plan: PlanFigures): string[] {
  const { blocks, groups, cvPercent, confidence, power, pairPercent, anyPercent, yearlyPercent, years } = plan
  if (pairPercent === null) return ['With one block a cell no difference between two groups can be told from chance.']
  const found = `found in ${percentWords(power * 100)} of such studies`
  const sentences = [
    `Two groups of ${countOf(blocks, 'block')} of one age: a difference of ${percentWords(pairPercent)} of the mean is ${found}; a smaller one is more often missed.`,
  ]
  if (anyPercent !== null && groups > 2)
    sentences.push(
      `One test of all ${groups} adhesives: ${percentWords(anyPercent)} between the strongest and the weakest is ${found}.`,
    )
  if (yearlyPercent !== null)
    sentences.push(
      `Over ${countOf(Number(writeSignificant(years, 3)), 'year')}: a steady change of ${smallPercent(yearlyPercent)} a year is ${found}, ${percentWords(yearlyPercent * years)} in all.`,
    )
  sentences.push(
    `This takes blocks of one group to vary by ${percentWords(cvPercent)}, and a difference to count at ${percentWords(confidence * 100)} confidence. Comparing many pairs needs more.`,
  )
  return sentences
}

/** What a figure of a plan rests on. */
export function planAbout(
  { title, confidence, power }: { title: string; confidence: number; power: number },
  cvPercent: number,
): string {
  const study = title === '' ? '' : `Study “${title}”. `
  return `${study}Blocks of one group taken to vary by ${percentWords(cvPercent)}, two groups compared at ${percentWords(100 * confidence)} confidence, found in ${percentWords(100 * power)} of such studies.`
}

/** A change a year, which may be far below one percent. */
function smallPercent(percent: number): string {
  return percent < 1 ? `${writeSignificant(percent, 2)} %` : percentWords(percent)
}

/** What the archive's own groups say of the spread. */
export function variationWords({ cvPercent, groups, blocks }: ArchiveVariation): string {
  return `${writeSignificant(cvPercent, 3)} % within ${countOf(groups, 'group')} of this archive, from ${countOf(blocks, 'result')}`
}

/** How many blocks a cell a wanted difference needs; null: more than anybody makes. */
export function blocksNeededWords(differencePercent: number, blocks: number | null): string {
  const wanted = `A difference of ${percentWords(differencePercent)}`
  return blocks === null
    ? `${wanted} would need more blocks than anybody makes.`
    : `${wanted} needs ${countOf(blocks, 'block')} a cell.`
}

/** A point of the curve of differences, read out. */
export function curvePointWords(blocks: number, differencePercent: number): string {
  return `${countOf(blocks, 'block')} a cell: ${percentWords(differencePercent)}`
}

/** What the curve of differences says. */
export function curveWords(planned: { blocks: number; differencePercent: number } | null): string {
  const falls = 'The more blocks a cell has, the smaller a difference it finds, ever more slowly.'
  return planned === null
    ? falls
    : `${falls} As planned, ${curvePointWords(planned.blocks, planned.differencePercent)}.`
}

/** Taken for the spread where neither a person nor the archive says one. Common practice for glued wood, no source. */
export const assumedCvPercent = 15

/** What is said where the archive knows no spread. */
export const assumedWords = `No group of this archive has two results yet: ${assumedCvPercent} % is assumed until you write a spread.`
