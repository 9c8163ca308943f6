import type { OverruledPeak, SetAsideCause } from '#contract/breaks/decision.ts'
import { plusDays } from '#domain/programme/calendar/calendarDay.ts'
import { plusMonths } from '#domain/programme/calendar/plusMonths.ts'
import { type DemoAdhesive, demoAdhesives, demoGluedOn } from './demoStudy.ts'

/** The blocks of an adhesive that left the store at one age. */
export type DemoPull = { adhesive: DemoAdhesive; ageMonths: number }

/** How the pulls of an age were broken: with the amplifier, or while it was away for repair by the dial of the press. */
const doneAges = [
  { ageMonths: 0, by: 'amplifier' },
  { ageMonths: 3, by: 'dial' },
  { ageMonths: 6, by: 'dial' },
  { ageMonths: 12, by: 'dial' },
  { ageMonths: 24, by: 'amplifier' },
] as const

/** Every pull that was done, in the order of its day, and how. */
export const demoPulls: readonly (DemoPull & { by: 'amplifier' | 'dial' })[] = doneAges.flatMap((done) =>
  demoAdhesives.map((adhesive) => ({ adhesive, ...done })),
)

/** The pull that a person moved, and by how many days. */
export const demoMoved = { code: 'F6', ageMonths: 12, days: 9, reason: 'the school was closed that week' }

/** Blocks need time to cure before they are broken for the first time, days. */
const cureDays = 14

/** The day on which a pull was done, or is due. */
export function demoPulledOn(startOn: string, { adhesive, ageMonths }: DemoPull): string {
  const gluedOn = demoGluedOn(startOn, adhesive)
  if (ageMonths === 0) return plusDays(gluedOn, cureDays)
  const isMoved = adhesive.code === demoMoved.code && ageMonths === demoMoved.ageMonths
  return plusDays(plusMonths(gluedOn, ageMonths), isMoved ? demoMoved.days : 0)
}

/** Blocks that were lost before their pull, as the demo calls them: when, in months after the first glue-up, and why. */
export const demoLosses: readonly { months: number; blocks: readonly string[]; reason: string }[] = [
  {
    months: 5,
    blocks: ['U3-L12-04'],
    reason: 'fell on the stone floor when the shelf was swept, and its joint opened',
  },
  {
    months: 9,
    blocks: ['V5-B24-02', 'V5-B24-07', 'V5-B36-01', 'V5-B36-10'],
    reason: 'the shelf in the bilge came down, and the labels were washed off',
  },
  {
    months: 20,
    blocks: ['E4-L36-05', 'E4-L48-09'],
    reason: 'taken by mistake for a lesson in fitting laps',
  },
]

/** Breaks that are not used, by block as the demo calls it, each with its reason. */
export const demoSetAside: Readonly<Record<string, { cause: SetAsideCause; reason: string }>> = {
  'C1-L0-07': {
    cause: 'specimen-slipped',
    reason: 'the block slipped in the fixture before it was loaded fully',
  },
  'E4-L0-03': { cause: 'other', reason: 'a knot runs through the overlap' },
  'U3-L0-11': { cause: 'other', reason: 'glued one day later than the group, from another bottle' },
}

/** Breaks whose peak a person overruled, by block as the demo calls it, each with the reason. */
export const demoOverruled: Readonly<Record<string, { kind: OverruledPeak['kind']; reason: string }>> = {
  'E4-L0-09': {
    kind: 'premature-failure',
    reason: 'the glue line had opened along one edge after the first slip',
  },
  'F6-L0-08': { kind: 'peak-picked', reason: 'the frame was leant on just before the break' },
}
