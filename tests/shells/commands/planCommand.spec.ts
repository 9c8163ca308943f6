import { expect, it } from 'vitest'
import { commands } from '#shells/commands/commands.ts'
import { runWords } from '#tests/fakes/commandRun.ts'

const plan = (...words: string[]) => runWords(commands, ['plan', ...words])
const study = ['--groups', '4', '--cv', '12']

it('prints one object with the third of n, difference and power', async () => {
  // R 4.2.2: power.t.test(power = .9, delta = 10 / 12, strict = TRUE, tol = 1e-12)$n
  const { code, lines } = await plan(...study, '--difference', '10', '--power', '0.9', '--json')
  expect(code).toBe(0)
  expect(lines).toEqual([
    {
      comparison: 'pair',
      groups: 4,
      n: expect.closeTo(31.2537142693, 6),
      cvPercent: 12,
      differencePercent: 10,
      power: 0.9,
      confidence: 0.95,
    },
  ])
})

it('compares all groups at once when asked', async () => {
  const { lines } = await plan(...study, '--n', '12', '--power', '0.9', '--comparison', 'any', '--json')
  expect(lines[0]).toMatchObject({ comparison: 'any', n: 12 })
})

it('says it in sentences without --json', async () => {
  expect((await plan(...study, '--n', '12', '--difference', '15')).out).toMatch(
    /With 12 blocks a group, a true difference/,
  )
})

it.each([
  [['--groups', '4', '--n', '12', '--power', '0.9'], /--groups and --cv/],
  [[...study, '--n', '12'], /Two of --n/],
  [[...study, '--n', '12', '--power', '0.9', '--difference', '10'], /Two of --n/],
  [[...study, '--n', '12', '--difference', '0'], /--difference must be a number above 0/],
  [[...study, '--n', '1', '--difference', '5'], /--n must be a number from 2/],
  [[...study, '--n', '12', '--power', '1'], /--power must be a number above 0 below 1/],
  [['--groups', '1', '--cv', '12', '--n', '12', '--power', '0.9'], /--groups must be a whole number from 2/],
])('refuses the command line %j', async (words, complaint) => {
  const { code, err } = await plan(...words)
  expect(code).toBe(2)
  expect(err).toMatch(complaint)
})
