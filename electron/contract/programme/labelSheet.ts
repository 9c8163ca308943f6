import * as z from 'zod'
import { finite, positive } from '../values.ts'

const mm = positive.max(1000)
const count = z.int().min(1).max(100)

/** A sheet of labels, in mm: the page, and where the labels lie on it, from its upper left corner. */
export const labelSheet = z.strictObject({
  pageWidthMm: mm,
  pageHeightMm: mm,
  columns: count,
  rows: count,
  labelWidthMm: mm,
  labelHeightMm: mm,
  leftMm: finite.nonnegative(),
  topMm: finite.nonnegative(),
  /** From the edge of one label to the next one's. */
  gapAcrossMm: finite.nonnegative(),
  gapDownMm: finite.nonnegative(),
  /** A thin line around every label, to cut along; not for sheets that are cut already. */
  outlined: z.boolean(),
})
export type LabelSheet = z.infer<typeof labelSheet>
