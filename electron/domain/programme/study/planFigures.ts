import type { StudyFields } from '#contract/programme/study.ts'
import { blocksForPower, detectableDifference, type PlannedTest } from '../sampleSize.ts'
import { yearlyChangeToFind } from './yearlyChange.ts'

/** What a plan can show; differences in percent of the mean, null: with one block a cell, or one age, none can be said. */
export type PlanFigures = {
  blocks: number
  /** Adhesives that are compared with each other. */
  groups: number
  cvPercent: number
  confidence: number
  power: number
  /** Two groups of one age. */
  pairPercent: number | null
  /** The strongest and the weakest of all adhesives, in one test of all. */
  anyPercent: number | null
  /** Steady change a year of one series over all its ages. */
  yearlyPercent: number | null
  /** From the first age to the last. */
  years: number
}

const pairOf = (confidence: number): PlannedTest => ({ comparison: 'pair', groups: 2, confidence })

/** What a study can show with spreads of so many percent. Source: sampleSize.ts and yearlyChange.ts. Checked: planFigures.spec.ts. */
export function planFigures(
  { adhesives, agesMonths, blocksPerCell: blocks, confidence, power }: StudyFields,
  cvPercent: number,
): PlanFigures {
  const groups = adhesives.length
  const inPercent = (sds: number | null) => (sds === null ? null : sds * cvPercent)
  const all: PlannedTest = { comparison: 'any', groups, confidence }
  return {
    ...{ blocks, groups, cvPercent, confidence, power },
    pairPercent: blocks < 2 ? null : inPercent(detectableDifference(pairOf(confidence), blocks, power)),
    anyPercent: blocks < 2 || groups < 2 ? null : inPercent(detectableDifference(all, blocks, power)),
    yearlyPercent: yearlyChangeToFind(agesMonths, blocks, { cvPercent, confidence, power }),
    years: (agesMonths.at(-1)! - agesMonths[0]!) / 12,
  }
}

/** Whole blocks a cell with which a difference of two groups is found; null: more than anybody makes. */
export function blocksNeeded(
  differencePercent: number,
  { confidence, power }: Pick<StudyFields, 'confidence' | 'power'>,
  cvPercent: number,
): number | null {
  const found = blocksForPower(pairOf(confidence), differencePercent / cvPercent, power)
  return found === null ? null : Math.ceil(found - 1e-9)
}
