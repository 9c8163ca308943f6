import { expect, test } from 'vitest'
import { ageingQuestion } from '#contract/findings/ageing.ts'
import { findingsOptions } from '#contract/findings/options.ts'
import { agedPictures } from '#renderer/pages/findings/ageing/agedPictures.ts'
import { scriptedFindings } from '#tests/fakes/scripted/scriptedFindings.ts'

async function pictures(
  change: { woodFailure?: 'observed' | 'censored' | 'bond-only' } = {},
  adhesives = ['casein C1'],
) {
  const options = findingsOptions.parse(change)
  const { 'findings.of': of, 'findings.ageing': ageing } = scriptedFindings()
  const question = ageingQuestion.parse({ options, filter: { adhesives } })
  const found = await of!({ options, filter: question.filter })
  const { woodFailure, limitPercent, adjustFactor } = options
  const treatment = { woodFailure, limitPercent, adjustFactor }
  return agedPictures(found, await ageing!(question), { treatment, sharePercent: 80, name: (group) => group })
}

test('draws every block that counts at its own age, the means of the ages, and the share that is watched', async () => {
  const [first] = await pictures()
  expect(first!.means.map(({ ageMonths }) => ageMonths)).toEqual([0, 6, 12, 24])
  // One of the eight of six months is left out
  expect(first!.blocks).toHaveLength(31)
  expect(first!.level!.strengthMPa).toBeCloseTo(0.8 * first!.means[0]!.meanMPa!, 12)
  expect(first!.curve!.at(-1)!.ageMonths).toBe(first!.endMonths)
})

test('puts all series on one scale that holds every block and mean, and not the whole of a wide band', async () => {
  const all = await pictures({}, ['casein C1', 'resorcinol R2'])
  expect(new Set(all.map(({ reachMPa }) => reachMPa)).size).toBe(1)
  const strongest = Math.max(...all.flatMap(({ blocks }) => blocks.map(({ strengthMPa }) => strengthMPa)))
  expect(all[0]!.reachMPa).toBeGreaterThanOrEqual(strongest)
  expect(all[0]!.reachMPa).toBeLessThanOrEqual(1.3 * strongest)
})

test('explains its signs itself only where it is alone', async () => {
  const several = await pictures()
  expect(several.length).toBeGreaterThan(1)
  expect(several.every(({ withKeys }) => !withKeys)).toBe(true)
})

test('says of a block whose wood failed that it held at least so much only where that is how torn wood is treated', async () => {
  const limits = async (woodFailure: 'observed' | 'censored') =>
    (await pictures({ woodFailure }, ['casein C1', 'resorcinol R2', 'epoxy E4', 'one-part polyurethane U3']))
      .flatMap(({ blocks }) => blocks)
      .filter(({ lowerLimit }) => lowerLimit).length
  expect(await limits('observed')).toBe(0)
  expect(await limits('censored')).toBeGreaterThan(0)
})
