import type { CurveFilter } from '#contract/breaks/curveFilter.ts'
import type { TroubleMessage } from '#contract/errors.ts'

/** What is shown of a curve beside itself. */
export type CurveLook = {
  filter: CurveFilter | null
  /** Window of the slope, s; null: no slope. */
  slopeWindowS: number | null
  seatedLine: boolean
  /** The event that is chosen, by its place in the result. */
  chosen: number | null
}

/** What came of asking for a filtered curve: its name with figures, or why it cannot be had. */
export type FilterAnswer = { name: string | null; trouble: TroubleMessage | null; pending: boolean }

export const noFilter: FilterAnswer = { name: null, trouble: null, pending: false }
