import { describe, expect, it } from 'vitest'
import {
  emptyStudy,
  isSeriesLeftOut,
  readStudy,
  type StudyTexts,
  textsOfStudy,
  toggleLeftOut,
} from '#renderer/pages/programme/studies/plan/studyForm.ts'
import { madeBoards, madeStudy } from '#tests/domain/programme/study/madeStudy.ts'
import { quantitiesIn } from '#words/units/quantities.ts'

const si = quantitiesIn('SI')
const kept = { seed: 7, demo: false }
const typed: StudyTexts = { ...emptyStudy, title: 'Which?', adhesives: ['casein C1', 'epoxy E4'], ages: '0, 6' }
const read = (changed: Partial<StudyTexts> = {}) => readStudy({ ...typed, ...changed }, si, kept)

describe('a study that is typed', () => {
  it('needs a title, an adhesive and an age, and has usual values for the rest', () => {
    expect(read().fields).toMatchObject({
      ...{ title: 'Which?', agesMonths: [0, 6], blocksPerCell: 12, jointTypes: [''], exposures: [''], gapsMm: [0] },
      ...{ confidence: 0.95, power: 0.8, windowDays: 7, cvPercent: null, seed: 7 },
    })
  })

  it('is neither drawn nor kept where its levels multiply beyond what can be planned', () => {
    const names = (what: string) => Array.from({ length: 100 }, (_, i) => `${what} ${i}`)
    const cells = read({ adhesives: names('A'), jointTypes: names('J'), exposures: names('E') })
    expect([cells.fields, cells.preview]).toEqual([null, null])
    expect(cells.errors.ages).toMatch(/cells/)
    const blocks = read({ adhesives: names('A'), blocksPerCell: '1000' })
    expect(blocks.errors).toEqual({ blocksPerCell: expect.stringMatching(/200.000\s+blocks/) })
  })

  it('is drawn before it has a title', () => {
    const { fields, preview, errors } = read({ title: ' ' })
    expect(fields).toBeNull()
    expect(preview?.adhesives).toHaveLength(2)
    expect(errors).toEqual({ title: 'Give the study a title.' })
  })

  it.each<[Partial<StudyTexts>, keyof StudyTexts, RegExp]>([
    [{ adhesives: [] }, 'adhesives', /at least one/],
    [{ ages: 'soon' }, 'ages', /no age/],
    [{ blocksPerCell: '' }, 'blocksPerCell', /1 to 1000/],
    [{ blocksPerCell: '2.5' }, 'blocksPerCell', /1 to 1000/],
    [{ sparesPerSeries: '-1' }, 'sparesPerSeries', /0 to 1000/],
    [{ windowDays: '400' }, 'windowDays', /0 to 365/],
    [{ confidence: '40' }, 'confidence', /between 50/],
    [{ power: '100' }, 'power', /between 5/],
    [{ cvPercent: '0' }, 'cvPercent', /above 0/],
    [{ overlapLengthMm: 'long' }, 'overlapLengthMm', /length/],
    [{ areaMm2: '0' }, 'areaMm2', /above 0/],
    [{ boards: [...madeBoards(1, 20), ...madeBoards(1, 30)] }, 'boards', /Name each board once/],
    [{ startOn: '2031-02-30' }, 'startOn', /year-month-day/],
    [{ wood: 'b'.repeat(201) }, 'wood', /too long/],
    [{ ages: Array.from({ length: 201 }, (_, age) => age).join() }, 'ages', /200 ages/],
    [{ exposures: ['loft', 'loft'] }, 'exposures', /once/],
  ])('says what is wrong with %j', (changed, key, message) => {
    const { fields, errors } = read(changed)
    expect(fields).toBeNull()
    expect(errors[key]).toMatch(message)
  })

  it('comes out as it was kept', () => {
    const fields = madeStudy({
      ...{ boards: madeBoards(3, 20), gapsMm: [0, 0.3], overlapLengthMm: 30.5, cvPercent: 9.5, startOn: '2031-03-01' },
      ...{ referenceAdhesive: 'epoxy E4', confidence: 0.99, power: 0.9, adhesiveGPerBlock: 0.4, sparesPerSeries: 2 },
      leftOut: [{ adhesive: 'epoxy E4', jointType: 'lap', gapMm: 0, exposure: 'loft', ageMonths: 3 }],
    })
    expect(readStudy(textsOfStudy(fields), si, { seed: fields.seed, demo: false }).fields).toEqual(fields)
  })
})

describe('leaving out', () => {
  const cell = { adhesive: 'epoxy E4', jointType: 'lap', gapMm: 0, exposure: 'loft', ageMonths: 3 }
  const series = { ...cell, ageMonths: null }

  it('a cell and taking it back in are one key each', () => {
    const out = toggleLeftOut([], cell)
    expect(out).toEqual([cell])
    expect(toggleLeftOut(out, cell)).toEqual([])
  })

  it('a whole row forgets what was left out of it', () => {
    const out = toggleLeftOut([cell, { ...cell, adhesive: 'casein C1' }], series)
    expect(out).toEqual([{ ...cell, adhesive: 'casein C1' }, series])
    expect(isSeriesLeftOut(out, cell)).toBe(true)
    expect(toggleLeftOut(out, series)).toHaveLength(1)
  })
})
