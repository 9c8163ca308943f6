import { expect, it } from 'vitest'
import { type ObservedBreak, observedBreaks } from '#domain/findings/observedBreak.ts'

const one: ObservedBreak = {
  specimenId: 1,
  breakId: 1,
  number: '1',
  adhesive: 'Hide glue',
  jointType: 'Lap',
  bondLineGapMm: null,
  exposure: 'Indoors',
  gluedOn: '2031-05-02',
  startedAt: '2032-05-02T09:30:00.000Z',
  areaMm2: 200,
  peakN: 2000,
  woodFailurePercent: 40,
  setAside: null,
  simulated: true,
  strengthMPa: null,
  ageMonths: null,
  studyId: null,
  pullAgeMonths: null,
  board: null,
}
const observed = (...breaks: Partial<ObservedBreak>[]) =>
  observedBreaks(
    breaks.map((given) => ({ ...one, ...given })),
    ({ adhesive }) => adhesive,
  )

it('has strength, age and torn wood of a break', () => {
  // EN 205: 2 kN on 200 mm2 is 10 N/mm2.
  expect(observed({})).toEqual([
    {
      group: 'Hide glue',
      ageMonths: 12,
      ageAtBreakMonths: 12,
      specimen: '1',
      strengthMPa: 10,
      woodFailurePercent: 40,
      board: null,
      excludedBecause: null,
      simulated: true,
    },
  ])
})

it('has no age where the day of glue-up is not known', () => {
  expect(observed({ gluedOn: null })[0]!.ageMonths).toBeNull()
})

it('is of the age of its pull among the groups, and keeps its own', () => {
  const late = { startedAt: '2032-06-10T09:30:00.000Z' }
  expect(observed({ ...late, pullAgeMonths: 12 }, late)).toMatchObject([
    { ageMonths: 12, ageAtBreakMonths: 13 },
    { ageMonths: 13, ageAtBreakMonths: 13 },
  ])
})

it('leaves out what a person set aside, with the reason', () => {
  expect(observed({ setAside: 'slipped' })[0]!.excludedBecause).toBe('slipped')
})

it('takes names that differ in case alone for one, under the first, and other gaps for others', () => {
  const names = observed({}, { adhesive: 'HIDE GLUE' }, { bondLineGapMm: 0.5, adhesive: 'hide glue' }).map(
    ({ group }) => group,
  )
  expect(names).toEqual(['Hide glue', 'Hide glue', 'hide glue'])
})
