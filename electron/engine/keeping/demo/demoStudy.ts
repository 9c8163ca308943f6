import type { ScenarioName } from '#contract/bench/source.ts'
import { type Series, type StudyFields, studyFields } from '#contract/programme/study.ts'
import { createRandom } from '#domain/numbers/random.ts'
import { plusDays } from '#domain/programme/calendar/calendarDay.ts'
import { plusMonths } from '#domain/programme/calendar/plusMonths.ts'

/**
 * The demo study: a small boatyard school that builds and mends wooden dinghies and asks which adhesives to teach. School,
 * adhesives and numbers are invented; no value here says anything about a real adhesive.
 */
export const demoAuthor = 'Saltmarsh Boatyard School (invented)'

export const demoNote = 'Invented data of the demo study.'

export type DemoAdhesive = {
  code: string
  name: string
  lot: string
  /** How its joints behave in the virtual press. */
  scenario: Exclude<ScenarioName, 'idle' | 'mixed' | 'clipping' | 'unloading'>
  /** Of joints as they were made. */
  strengthMPa: number
  strengthSD: number
  woodFailurePercent: number
}

export const demoAdhesives: readonly DemoAdhesive[] = [
  ['C1', 'casein', 'brittle', 7.6, 0.8, 30],
  ['E4', 'epoxy', 'stick-slip', 11.2, 1.1, 45],
  ['F6', 'urea-formaldehyde', 'brittle', 10.4, 0.9, 75],
  ['R2', 'resorcinol', 'brittle', 11.9, 1, 85],
  ['U3', 'one-part polyurethane', 'progressive', 9.8, 1.2, 55],
  ['V5', 'cross-linking PVA', 'hand-pumped', 10.1, 0.9, 65],
].map(([code, name, scenario, strengthMPa, strengthSD, woodFailurePercent]) => ({
  code,
  name: `${name} ${code}`,
  lot: `${code}-lot-1`,
  scenario,
  strengthMPa,
  strengthSD,
  woodFailurePercent,
})) as DemoAdhesive[]

const exposures = ['loft', 'bilge'] as const

/** Blocks that differ in nothing that the study controls. */
export type DemoGroup = { adhesive: DemoAdhesive; exposure: (typeof exposures)[number]; ageMonths: number }

/** The ages at which blocks are pulled, months. */
export const demoAges = [0, 3, 6, 12, 24, 36, 48] as const
export const blocksPerGroup = 12
const sparesPerSeries = 2

/** Every group that the school has made, in the order in which the study plans them. */
export const demoGroups: readonly DemoGroup[] = demoAdhesives.flatMap((adhesive) =>
  exposures.flatMap((exposure) => demoAges.map((ageMonths) => ({ adhesive, exposure, ageMonths }))),
)

/** Whether a cell of the study is that group. */
export function isOfGroup(
  group: DemoGroup,
  cell: Pick<Series, 'adhesive' | 'exposure'> & { ageMonths: number | null },
) {
  return cell.adhesive === group.adhesive.name && cell.exposure === group.exposure && cell.ageMonths === group.ageMonths
}

/** The plan of the school; `startOn`: the day on which the first adhesive is glued. */
export function demoStudyFields(startOn: string): StudyFields {
  return studyFields.parse({
    title: 'Which adhesives shall we teach?',
    question: 'Which adhesives keep a lap joint of beech together, in a dry sail loft and in a damp bilge?',
    adhesives: demoAdhesives.map(({ name }) => name),
    jointTypes: ['beech lap, long grain to long grain'],
    gapsMm: [0],
    exposures: [...exposures],
    agesMonths: [...demoAges],
    ...{ blocksPerCell: blocksPerGroup, sparesPerSeries },
    referenceAdhesive: demoAdhesives.find(({ code }) => code === 'R2')!.name,
    ...{ windowDays: 14, startOn, wood: 'beech', cvPercent: 10, adhesiveGPerBlock: 0.4, seed: 1947, demo: true },
    ...{ overlapLengthMm: 30, overlapWidthMm: 20, pieceLengthMm: 80, pieceWidthMm: 20, pieceThicknessMm: 10 },
    boards: Array.from({ length: 12 }, (_, index) => ({ name: `plank ${index + 1}`, blocks: 90 })),
  })
}

/** The pull at this age comes next. */
const nextAgeMonths = 36

/** When the first adhesive was glued so that, on that day, the next pull is due. */
export function demoStart(today: string): string {
  return plusDays(plusMonths(today, -nextAgeMonths), -5)
}

/** The day on which an adhesive was glued, ISO 8601: one after the other. */
export function demoGluedOn(startOn: string, adhesive: DemoAdhesive): string {
  return plusDays(startOn, 2 * demoAdhesives.indexOf(adhesive))
}

/** How the demo calls a block, by its place in its group from 0 on; what is written on the block itself is its label. */
export function demoBlockName({ adhesive, exposure, ageMonths }: DemoGroup, index: number): string {
  return `${adhesive.code}-${exposure === 'loft' ? 'L' : 'B'}${ageMonths}-${String(index + 1).padStart(2, '0')}`
}

/** The overlaps of the blocks of an adhesive, about 30 mm x 20 mm as measured on each, and where they lie. */
export function demoSizes<Block extends { exposure: string }>(adhesive: DemoAdhesive, blocks: readonly Block[]) {
  const random = createRandom(demoAdhesives.indexOf(adhesive) + 1, 100)
  const toTwentieth = (lengthMm: number) => Math.round(lengthMm * 20) / 20
  return blocks.map((block) => {
    const overlapLengthMm = toTwentieth(random.between(29.5, 30.5))
    const overlapWidthMm = toTwentieth(random.between(19.7, 20.3))
    return {
      ...{ block, overlapLengthMm, overlapWidthMm },
      areaMm2: Math.round(overlapLengthMm * overlapWidthMm * 100) / 100,
      place: `${block.exposure} shelf ${adhesive.code}`,
    }
  })
}
