import { expect, it } from 'vitest'
import { buildGivingWay, pointsEach } from '#renderer/pages/breaks/compare/loadedCurves.ts'
import { buildLevels } from '#renderer/plots/minMaxLevels.ts'

it('fetches usual curves whole, and thins only when many come together', () => {
  expect([1, 2, 50].map(pointsEach)).toEqual([200_000, 200_000, 200_000])
  expect(pointsEach(200)).toBe(50_000)
})

it('lets others have a turn while it builds, and comes to the same levels', async () => {
  const timeS = Float64Array.from({ length: 400_000 }, (_, i) => i)
  const force = timeS.map((time) => (time * 7919) % 1009)
  let turns = 0
  const count = setInterval(() => turns++, 0)
  const built = await buildGivingWay(timeS, force)
  clearInterval(count)
  expect(turns).toBeGreaterThan(0)
  expect(built.levels).toEqual(buildLevels(timeS, force).levels)
})
