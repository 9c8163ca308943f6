import type { Series, StudyFields } from '#contract/programme/study.ts'

/** Blocks that differ in nothing that the study controls; `ageMonths` null: the spares of a series. */
export type StudyCell = Series & { ageMonths: number | null }

/** What the cells of a study follow from. */
export type StudyPlan = Pick<
  StudyFields,
  'adhesives' | 'jointTypes' | 'gapsMm' | 'exposures' | 'agesMonths' | 'leftOut'
>

/** The same text for the same series. */
export function seriesKey({ adhesive, jointType, gapMm, exposure }: Series): string {
  return JSON.stringify([adhesive, jointType, gapMm, exposure])
}

/** The same text for the same cell. */
export function cellKey(cell: StudyCell): string {
  return `${cell.ageMonths ?? 'spares'} ${seriesKey(cell)}`
}

/** The series of a study that are made: every combination, adhesive first, without those left out whole or at all ages. */
export function seriesOf(plan: StudyPlan): Series[] {
  const kept = new Set(cellsOf(plan).map(seriesKey))
  return combinationsOf(plan).filter((series) => kept.has(seriesKey(series)))
}

/** The cells of a study that are made: every series at every age, ages rising, without those left out. */
export function cellsOf(plan: StudyPlan): (Series & { ageMonths: number })[] {
  const leftOut = new Set(plan.leftOut.map((one) => (one.ageMonths === null ? seriesKey(one) : cellKey(one))))
  return combinationsOf(plan)
    .filter((series) => !leftOut.has(seriesKey(series)))
    .flatMap((series) => plan.agesMonths.map((ageMonths) => ({ ...series, ageMonths })))
    .filter((cell) => !leftOut.has(cellKey(cell)))
}

function combinationsOf({ adhesives, jointTypes, gapsMm, exposures }: StudyPlan): Series[] {
  return adhesives.flatMap((adhesive) =>
    jointTypes.flatMap((jointType) =>
      gapsMm.flatMap((gapMm) => exposures.map((exposure) => ({ adhesive, jointType, gapMm, exposure }))),
    ),
  )
}
