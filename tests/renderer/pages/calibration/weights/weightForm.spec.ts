import { describe, expect, it } from 'vitest'
import { weightEntry } from '#contract/calibration/weight.ts'
import { checkedWeights } from '#domain/calibration/routinePlan.ts'
import { emptyWeight, readWeight, textsOfWeight, usualWeights } from '#renderer/pages/calibration/weights/weightForm.ts'
import { quantitiesIn } from '#words/units/quantities.ts'

const [SI, US] = [quantitiesIn('SI'), quantitiesIn('US')]
const typed = { ...emptyWeight, name: '10 kg', nominal: '10' }

describe('readWeight', () => {
  it('reads a weight of a class, a comma as a decimal point', () => {
    expect(readWeight({ ...typed, conventional: '9,9996' }, [], SI).weight).toEqual({
      name: '10 kg',
      nominalKg: 10,
      conventionalMassKg: 9.9996,
      tolerance: { kind: 'oiml', class: 'M1' },
      density: { kind: 'material', material: 'cast iron' },
    })
  })
  it('reads pounds as pounds: NIST SP 811 has 1 lb = 0.453 592 37 kg', () => {
    const read = readWeight({ ...typed, nominal: '50' }, [], US)
    expect(read.weight?.nominalKg).toBeCloseTo(50 * 0.45359237, 9)
  })
  it('reads a tolerance in ounces and a density in pounds per cubic foot: NIST SP 811', () => {
    const own = { ...typed, class: 'own', halfWidth: '1', material: 'typed', density: '490' } as const
    const { weight } = readWeight(own, [], US)
    expect(weight?.tolerance).toEqual({ kind: 'own', halfWidthKg: expect.closeTo(0.02834952, 8) })
    expect(weight?.density).toEqual({ kind: 'typed', kgPerM3: expect.closeTo(490 * 16.01846, 2) })
  })
  it('reads a tolerance in grams and a density of its own', () => {
    const own = readWeight({ ...typed, class: 'own', halfWidth: '2.5', material: 'typed', density: '7100' }, [], SI)
    expect(own.weight?.tolerance).toEqual({ kind: 'own', halfWidthKg: 0.0025 })
    expect(own.weight?.density).toEqual({ kind: 'typed', kgPerM3: 7100 })
  })
  it.each([
    ['name', { name: ' ' }, 'name that is marked'],
    ['name', { name: '5 kg' }, 'already'],
    ['nominal', { nominal: 'ten' }, '“ten” is not a number'],
    ['nominal', { nominal: '' }, 'Write the mass'],
    ['nominal', { nominal: '-5' }, 'heavier than 0'],
    ['conventional', { conventional: '19' }, 'more than 20 %'],
    ['halfWidth', { class: 'own', halfWidth: '' }, 'how many g it may'],
    ['halfWidth', { class: 'own', halfWidth: '-1' }, '0 g or more'],
    ['density', { material: 'typed', density: '12' }, 'Between 900'],
  ] as const)('says by the field %s what is wrong with %j', (field, change, words) => {
    const { weight, errors } = readWeight({ ...typed, ...change }, ['5 kg'], SI)
    expect(weight).toBeNull()
    expect(errors?.[field]).toContain(words)
    expect(Object.keys(errors ?? {})).toEqual([field])
  })
})

it('shows a kept weight as it can be read again', () => {
  for (const weight of usualWeights.SI) expect(readWeight(textsOfWeight(weight), [], SI).weight).toEqual(weight)
})

it.each(['SI', 'US'] as const)('begins with weights in %s units that the program takes as they are', (units) => {
  const weights = usualWeights[units].map((weight) => weightEntry.parse(weight))
  expect(checkedWeights(weights)).toHaveLength(6)
})

it('begins with whole pounds where pounds are read, and says no class that OIML R 111 does not have for them', () => {
  // NIST SP 811: 1 lb = 0.453 592 37 kg
  expect(usualWeights.US.map(({ nominalKg }) => nominalKg / 0.45359237)).toEqual([2, 5, 10, 25, 50, 50])
  expect(usualWeights.US.map(({ name }) => name)).toContain('50 lb b')
})
