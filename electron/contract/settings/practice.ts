import * as z from 'zod'
import { finite, positive, words } from '../values.ts'

/** Least and most of a figure; null: no limit on that side. */
const limits = z.strictObject({ least: finite.nonnegative().nullable(), most: finite.nonnegative().nullable() })
export type Limits = z.infer<typeof limits>

/** How a test practice wants a specimen to be loaded. Limits that it does not name are open on both sides. */
export const testPractice = z.strictObject({
  name: words.min(1),
  /** The standard's clause, or "common practice, no source". */
  source: z.string().trim().max(500),
  timeToFailureS: limits,
  rateNPerS: limits,
  /** Rate of shear stress, needs the bonded area. */
  rateMPaPerS: limits,
  /** Speed of the moving head. */
  speedMmPerMin: limits,
  /** Highest sampling bound, percent of the peak. */
  samplingBoundPercent: positive.nullable(),
})
export type TestPractice = z.infer<typeof testPractice>

const open: Limits = { least: null, most: null }

/** What a new archive starts with; all of it may be edited. */
export const defaultPractices: readonly TestPractice[] = [
  {
    name: 'Hand press',
    source: 'common practice, no source: 5 s to 60 s from start of loading to failure',
    timeToFailureS: { least: 5, most: 60 },
    rateNPerS: open,
    rateMPaPerS: open,
    speedMmPerMin: open,
    samplingBoundPercent: 1,
  },
  {
    name: 'ASTM D905',
    source: 'ASTM D905, apparatus clause: 5 mm/min ± 25 % to maximum load',
    timeToFailureS: open,
    rateNPerS: open,
    rateMPaPerS: open,
    speedMmPerMin: { least: 3.75, most: 6.25 },
    samplingBoundPercent: 1,
  },
  {
    name: 'EN 205',
    source: "EN 205: 50 mm/min; the ± 10 % is this program's own",
    timeToFailureS: open,
    rateNPerS: open,
    rateMPaPerS: open,
    speedMmPerMin: { least: 45, most: 55 },
    samplingBoundPercent: 1,
  },
]
