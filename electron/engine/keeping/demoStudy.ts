import type { ScenarioName } from '#contract/bench/source.ts'
import type { FailurePattern } from '#contract/breaks/assessment.ts'
import type { OverruledPeak, SetAsideCause } from '#contract/breaks/decision.ts'
import { type Series, type StudyFields, studyFields } from '#contract/programme/study.ts'
import { createRandom } from '#domain/numbers/random.ts'
import { dayOf, plusDays } from '#domain/programme/calendar/calendarDay.ts'
import { plusMonths } from '#domain/programme/calendar/plusMonths.ts'
import { cellsOf } from '#domain/programme/study/cells.ts'

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

/** A group of twelve blocks that differ in nothing that the study controls. */
export type DemoGroup = {
  adhesive: DemoAdhesive
  exposure: 'loft' | 'bilge'
  ageMonths: number
  /** So many of them, from the first on, are broken already. */
  broken: number
}

export const blocksPerGroup = 12

const group = (code: string, exposure: DemoGroup['exposure'], ageMonths: number, broken: number): DemoGroup => ({
  adhesive: demoAdhesives.find((adhesive) => adhesive.code === code)!,
  exposure,
  ageMonths,
  broken,
})

/** What the school has made: everything was broken at the start except the last adhesive, the later pulls wait. */
export const demoGroups: readonly DemoGroup[] = [
  group('C1', 'loft', 0, 12),
  group('E4', 'loft', 0, 12),
  group('F6', 'loft', 0, 12),
  group('R2', 'loft', 0, 12),
  group('U3', 'loft', 0, 12),
  group('V5', 'loft', 0, 4),
  ...demoAdhesives.map(({ code }) => group(code, 'bilge', 3, 0)),
  group('E4', 'loft', 12, 0),
  group('R2', 'loft', 12, 0),
]

const exposures = ['loft', 'bilge'] as const

/** The series that a group belongs to. */
function seriesOf({ adhesive, exposure }: Pick<DemoGroup, 'adhesive' | 'exposure'>): Series {
  return { adhesive: adhesive.name, jointType: 'beech lap, long grain to long grain', gapMm: 0, exposure }
}

/** Whether a cell of the study is that group. */
export function isOfGroup(
  group: DemoGroup,
  cell: Pick<Series, 'adhesive' | 'exposure'> & { ageMonths: number | null },
) {
  return cell.adhesive === group.adhesive.name && cell.exposure === group.exposure && cell.ageMonths === group.ageMonths
}

/** The plan of the school; `startOn`: the day on which the first adhesive is glued. What it has not made is left out. */
export function demoStudyFields(startOn: string): StudyFields {
  const { jointType, gapMm } = seriesOf(demoGroups[0]!)
  const whole = studyFields.parse({
    title: 'Which adhesives shall we teach?',
    question: 'Which adhesives keep a lap joint of beech together, in a dry sail loft and in a damp bilge?',
    adhesives: demoAdhesives.map(({ name }) => name),
    jointTypes: [jointType],
    gapsMm: [gapMm],
    exposures: [...exposures],
    agesMonths: [0, 3, 12],
    blocksPerCell: blocksPerGroup,
    referenceAdhesive: demoAdhesives.find(({ code }) => code === 'R2')!.name,
    ...{ windowDays: 14, startOn, wood: 'beech', cvPercent: 10, adhesiveGPerBlock: 0.4, seed: 1947, demo: true },
    ...{ overlapLengthMm: 30, overlapWidthMm: 20, pieceLengthMm: 80, pieceWidthMm: 20, pieceThicknessMm: 10 },
    boards: Array.from({ length: 6 }, (_, index) => ({ name: `plank ${index + 1}`, blocks: 30 })),
  })
  const leftOut = cellsOf(whole).filter((cell) => !demoGroups.some((group) => isOfGroup(group, cell)))
  return { ...whole, leftOut }
}

/** When the first adhesive was glued so that, on that day, the pull at three months is due. */
export function demoStart(today: string): string {
  return plusDays(plusMonths(today, -3), -5)
}

const dayMs = 86_400_000

/** The day on which a group was glued, ISO 8601: one adhesive after the other. */
export function demoGluedOn(startOn: string, { adhesive }: DemoGroup): string {
  return plusDays(startOn, 2 * demoAdhesives.indexOf(adhesive))
}

/** The afternoon on which a group of age 0 was broken, ms since 1970: two weeks after its glue-up. */
export function brokenOnMs(startOn: string, group: DemoGroup): number {
  return (dayOf(demoGluedOn(startOn, group)) + 14) * dayMs + 13.5 * 3_600_000
}

/** How the demo calls a block, by its place in its group from 0 on; what is written on the block itself is its label. */
export function demoBlockName({ adhesive, exposure, ageMonths }: DemoGroup, index: number): string {
  return `${adhesive.code}-${exposure === 'loft' ? 'L' : 'B'}${ageMonths}-${String(index + 1).padStart(2, '0')}`
}

/** The overlaps of the twelve blocks of a group, about 30 mm x 20 mm as measured on each, and where they lie. */
export function demoSizes(group: DemoGroup) {
  const random = createRandom(demoGroups.indexOf(group) + 1, 100)
  const toTwentieth = (lengthMm: number) => Math.round(lengthMm * 20) / 20
  return Array.from({ length: blocksPerGroup }, () => {
    const overlapLengthMm = toTwentieth(random.between(29.5, 30.5))
    const overlapWidthMm = toTwentieth(random.between(19.7, 20.3))
    return {
      ...{ overlapLengthMm, overlapWidthMm, areaMm2: Math.round(overlapLengthMm * overlapWidthMm * 100) / 100 },
      ...{ place: `${group.exposure} shelf ${group.adhesive.code}`, asPlanned: false },
    }
  })
}

/** The strength that the virtual press finds in a block, MPa. */
export function demoStrengthMPa(group: DemoGroup, index: number): number {
  const { strengthMPa, strengthSD } = group.adhesive
  const drawn = createRandom(demoGroups.indexOf(group) * 100 + index, 101).normal()
  return strengthMPa + strengthSD * Math.max(-2.5, Math.min(2.5, drawn))
}

/** What the broken faces of a block look like, to the nearest 5 %. */
export function demoAssessment(
  group: DemoGroup,
  index: number,
): { woodFailurePercent: number; failurePattern: FailurePattern } {
  const drawn = createRandom(demoGroups.indexOf(group) * 100 + index, 102).normal()
  const percent = Math.max(0, Math.min(100, group.adhesive.woodFailurePercent + 15 * drawn))
  const woodFailurePercent = Math.round(percent / 5) * 5
  return {
    woodFailurePercent,
    failurePattern: woodFailurePercent >= 75 ? 'CSF' : woodFailurePercent >= 40 ? 'SCF' : 'AF',
  }
}

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
