import { describe, expect, it } from 'vitest'
import { areaFromOverlap, emptyTexts, readSpecimen, textsOf } from '#renderer/pages/specimens/specimenForm.ts'
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
    const again = readSpecimen(textsOf(fields!, US), US, false).fields
    expect(again?.areaMm2).toBeCloseTo(600, 2)
  })

  it('refuses a date that is none', () => {
    expect(readSpecimen({ ...filled, gluedOn: '2026-02-31' }, SI, false).errors?.gluedOn).toContain('date')
  })
})

describe('areaFromOverlap', () => {
  it('multiplies, and stays empty while a side is missing', () => {
    expect(areaFromOverlap('30', '20')).toBe('600')
    expect(areaFromOverlap('30', '')).toBe('')
    expect(areaFromOverlap('30', '2o')).toBe('')
  })
})
