import type { ScenarioName } from '#contract/bench/source.ts'
import type { FailurePattern } from '#contract/breaks/assessment.ts'
import type { OverruledPeak, SetAsideCause } from '#contract/breaks/decision.ts'
import { type SpecimenFields, specimenFields } from '#contract/specimens/specimen.ts'
import { createRandom } from '#domain/numbers/random.ts'

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

const glueUpMs = Date.UTC(2025, 8, 1)
const dayMs = 86_400_000

/** The day on which a group was glued, ms since 1970: one adhesive after the other. */
export function gluedOnMs({ adhesive }: DemoGroup): number {
  return glueUpMs + demoAdhesives.indexOf(adhesive) * 2 * dayMs
}

/** The afternoon on which a group of age 0 was broken, ms since 1970: two weeks after its glue-up. */
export function brokenOnMs(group: DemoGroup): number {
  return gluedOnMs(group) + 14 * dayMs + 13.5 * 3_600_000
}

/** The twelve blocks of a group, overlap about 30 mm x 20 mm as measured on each. */
export function demoBlocks(group: DemoGroup): SpecimenFields[] {
  const { adhesive, exposure, ageMonths } = group
  const random = createRandom(demoGroups.indexOf(group) + 1, 100)
  const toTwentieth = (lengthMm: number) => Math.round(lengthMm * 20) / 20
  return Array.from({ length: blocksPerGroup }, (_, index) => {
    const overlapLengthMm = toTwentieth(random.between(29.5, 30.5))
    const overlapWidthMm = toTwentieth(random.between(19.7, 20.3))
    const number = String(index + 1).padStart(2, '0')
    return specimenFields.parse({
      number: `${adhesive.code}-${exposure === 'loft' ? 'L' : 'B'}${ageMonths}-${number}`,
      adhesive: adhesive.name,
      lot: adhesive.lot,
      jointType: 'beech lap, long grain to long grain',
      exposure,
      bondLineGapMm: 0,
      overlapLengthMm,
      overlapWidthMm,
      areaMm2: Math.round(overlapLengthMm * overlapWidthMm * 100) / 100,
      gluedOn: new Date(gluedOnMs(group)).toISOString().slice(0, 10),
      place: `${exposure} shelf ${adhesive.code}`,
      notes: `${demoNote} Pull at ${ageMonths} months.`,
      demo: true,
    })
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

/** Breaks that are not used, by block number, each with its reason. */
export const demoSetAside: Readonly<Record<string, { cause: SetAsideCause; reason: string }>> = {
  'C1-L0-07': {
    cause: 'specimen-slipped',
    reason: 'the block slipped in the fixture before it was loaded fully',
  },
  'E4-L0-03': { cause: 'other', reason: 'a knot runs through the overlap' },
  'U3-L0-11': { cause: 'other', reason: 'glued one day later than the group, from another bottle' },
}

/** Breaks whose peak a person overruled, by block number, each with the reason. */
export const demoOverruled: Readonly<Record<string, { kind: OverruledPeak['kind']; reason: string }>> = {
  'E4-L0-09': {
    kind: 'premature-failure',
    reason: 'the glue line had opened along one edge after the first slip',
  },
  'F6-L0-08': { kind: 'peak-picked', reason: 'the frame was leant on just before the break' },
}
