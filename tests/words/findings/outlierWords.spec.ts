import { expect, it } from 'vitest'
import { otherwiseWords, pointedOutWords } from '#words/findings/outlierWords.ts'

const name = (group: string) => group
const of = (group: string, meanMPa: number | null, otherwiseMPa: number | null) => ({ group, meanMPa, otherwiseMPa })

it('says which tests point a block out, and that it counts all the same', () => {
  expect(pointedOutWords(['grubbs', 'generalized-esd'])).toBe(
    'pointed out by Grubbs and generalised ESD; it counts until a person leaves it out',
  )
})

it('says whether the order would be another one, and who would be first', () => {
  expect(otherwiseWords('So', [of('A', 3, 2), of('B', 1, 1)], name)).toMatch(/^So, the order .* stays as it is\.$/)
  expect(otherwiseWords('So', [of('A', 3, 3), of('B', 2, 1), of('C', 1, 2)], name)).toMatch(/would be another one/)
  expect(otherwiseWords('So', [of('A', 3, 1), of('B', 2, 2)], name)).toBe('So, B would have the highest mean, not A.')
})
