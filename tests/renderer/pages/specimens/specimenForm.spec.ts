import { describe, expect, it } from 'vitest'
import {
  emptyTexts,
  readSpecimen,
  specimenUnits,
  textsOf,
  withArea,
  withNominal,
} from '#renderer/pages/specimens/specimenForm.ts'
import { readableTexts } from '#renderer/parts/forms/typedTexts.ts'
import { quantitiesIn } from '#words/units/quantities.ts'

const SI = quantitiesIn('SI')
const US = quantitiesIn('US')
const filled = { ...emptyTexts, number: 'C1-LL-03', adhesive: 'casein C1', overlapLengthMm: '30', areaMm2: '600' }

describe('readSpecimen', () => {
  it('reads a filled form', () => {
    expect(readSpecimen(filled, SI, false).fields).toMatchObject({
      number: 'C1-LL-03',
      areaMm2: 600,
      overlapWidthMm: null,
    })
  })

  it('says in one sentence what is wrong with each field', () => {
    const { errors } = readSpecimen(
      { ...emptyTexts, areaMm2: 'six', overlapLengthMm: '0', bondLineGapMm: '-1' },
      SI,
      false,
    )
    expect(errors).toEqual({
      number: 'Write the specimen number.',
      adhesive: 'Write the adhesive.',
      areaMm2: '“six” is not a number. Write the area in mm².',
      overlapLengthMm: 'The length must be more than 0 mm.',
      bondLineGapMm: 'The gap must be more than 0 mm.',
    })
  })

  it('takes a gap of 0, which is a tight joint', () => {
    expect(readSpecimen({ ...filled, bondLineGapMm: '0' }, SI, false).fields?.bondLineGapMm).toBe(0)
  })

  it('stores millimetres when inches are typed (1 in = 25.4 mm exactly)', () => {
    const { fields } = readSpecimen({ ...filled, overlapLengthMm: '2', areaMm2: '1' }, US, false)
    expect(fields?.overlapLengthMm).toBeCloseTo(50.8, 10)
    expect(fields?.areaMm2).toBeCloseTo(645.16, 8)
  })

  it('does not drift when a form in inches is opened and kept', () => {
    const { fields } = readSpecimen(filled, SI, false)
    const texts = readableTexts({ texts: textsOf(fields!), typedIn: {} }, specimenUnits, US)
    expect(readSpecimen(texts, US, false).fields).toEqual(fields)
  })

  it('refuses a date that is none', () => {
    expect(readSpecimen({ ...filled, gluedOn: '2026-02-31' }, SI, false).errors?.gluedOn).toContain('date')
  })
})

describe('withArea', () => {
  const sides = (overlapLengthMm: string, overlapWidthMm: string, areaMm2 = '') => ({
    ...emptyTexts,
    overlapLengthMm,
    overlapWidthMm,
    areaMm2,
  })
  const areaAfter = (before: ReturnType<typeof sides>, next: ReturnType<typeof sides>, units = SI) =>
    withArea(before, next, units).areaMm2

  it('multiplies, and stays empty while a side is missing', () => {
    expect(areaAfter(sides('30', ''), sides('30', '20'))).toBe('600')
    expect(areaAfter(sides('30', '20', '600'), sides('30', '', '600'))).toBe('')
    expect(areaAfter(sides('30', ''), sides('30', '2o'))).toBe('')
  })

  it('leaves an area that a person wrote', () =>
    expect(areaAfter(sides('30', '20', '550'), sides('31', '20', '550'))).toBe('550'))

  it('multiplies fractions of inches, and follows after the units changed', () => {
    // 1 3/16 in x 3/4 in = 0.890625 in².
    expect(areaAfter(sides('1 3/16', ''), sides('1 3/16', '3/4'), US)).toBe('0.890625')
    expect(areaAfter(sides('30 mm', '20 mm', '600 mm²'), sides('2', '20 mm', '600 mm²'), US)).toBe('1.5748')
  })
})

describe('withNominal', () => {
  const lap = { overlapLengthMm: 30, overlapWidthMm: 20, areaMm2: null }

  it('brings the sizes of the joint type where none are written, in the units of the reader', () => {
    expect(withNominal(emptyTexts, lap, SI)).toMatchObject({
      ...{ overlapLengthMm: '30', overlapWidthMm: '20', areaMm2: '600' },
    })
    // 30 mm / 25.4 mm, 600 mm2 / 645.16 mm2
    expect(withNominal(emptyTexts, lap, US)).toMatchObject({ overlapLengthMm: '1.1811', areaMm2: '0.930002' })
  })

  it('leaves sizes that a person wrote', () => {
    const measured = { ...emptyTexts, overlapLengthMm: '30.2' }
    expect(withNominal(measured, lap, SI)).toBe(measured)
    expect(withNominal(emptyTexts, null, SI)).toBe(emptyTexts)
  })
})
