import { describe, expect, it } from 'vitest'
import { areaQuestion, strengthQuestion } from '#words/specimens/plausibleWords.ts'
import { quantitiesIn } from '#words/units/quantities.ts'

const [SI, US] = [quantitiesIn('SI'), quantitiesIn('US')]
const sides = (lengthMm: number, widthMm: number, areaMm2 = lengthMm * widthMm) => ({ lengthMm, widthMm, areaMm2 })

describe('areaQuestion', () => {
  it.each([
    ['30 x 20 mm', sides(30, 20)],
    ['2 x 1.5 in', sides(50.8, 38.1)],
    ['10 x 20 mm', sides(10, 20)],
    ['nothing yet', { lengthMm: 30, widthMm: null, areaMm2: null }],
    ['a scarf of 8 to 1', sides(30, 20, 4800)],
  ])('has nothing to ask about %s', (_name, sizes) => expect(areaQuestion(sizes, SI.area)).toBeNull())

  it('asks about 30 x 20 in, in the units shown', () =>
    expect(areaQuestion(sides(762, 508), US.area)).toBe(
      'Is that right? 600\u00a0in² is larger than a joint that a small press can break. Look at the numbers and their units.',
    ))

  it('asks about a joint of a fraction of a square millimetre', () =>
    expect(areaQuestion({ lengthMm: null, widthMm: null, areaMm2: 0.93 }, SI.area)).toContain(
      '0.9\u00a0mm² is smaller',
    ))

  it('asks about an area that its sides cannot have', () =>
    expect(areaQuestion(sides(30, 20, 387_096), SI.area)).toContain('Length times width is 600\u00a0mm²'))
})

describe('strengthQuestion', () => {
  // Wood Handbook (FPL-GTR-190), table 5-5b: bullau, shear parallel to grain at 12 %, 2,190 lbf/in².
  it.each([null, 0.5, 8.02, 2190 * 0.006894757])('has nothing to ask about %s MPa', (strengthMPa) =>
    expect(strengthQuestion(strengthMPa, SI.strength)).toBeNull(),
  )

  it('asks about 2 psi, and about more than twice what wood bears', () => {
    expect(strengthQuestion(2 * 0.006894757, US.strength)).toContain('2\u00a0psi is next to nothing')
    expect(strengthQuestion(60, SI.strength)).toContain('more than twice what the strongest wood bears')
  })
})
