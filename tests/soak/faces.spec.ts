import { expect, it } from 'vitest'
import { errorsOf, readFaces } from './faces.ts'

it('proposes the torn wood of drawn faces of every difficulty within a few points', () => {
  const figures = errorsOf(readFaces(11, 501, 320, 240))
  expect(figures.proposed).toBeGreaterThanOrEqual(10)
  expect(figures.median).toBeLessThanOrEqual(5)
  expect(figures.within5).toBeGreaterThanOrEqual(9)
})
