import { expect, it } from 'vitest'
import { overloadWords } from '#words/bench/overloadWords.ts'

const force = (forceN: number) => `${forceN} N`

it('says nothing below 90 percent', () => {
  expect(overloadWords({ overload: 'none', capacityShare: 0.5, capacityN: 20_000 }, force)).toBeNull()
})

it('names share and rated load in a warning', () => {
  const words = overloadWords({ overload: 'warning', capacityShare: 0.94, capacityN: 20_000 }, force)
  expect(words?.advice).toContain('94 % of the rated load of 20000 N')
})

it('tells what to do first in an alarm', () => {
  const words = overloadWords({ overload: 'alarm', capacityShare: 1.031, capacityN: 20_000 }, force)
  expect(words?.title).toContain('Take the load off now')
  expect(words?.advice).toContain('103 %')
})
