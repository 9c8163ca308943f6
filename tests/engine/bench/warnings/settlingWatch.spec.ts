import { expect, it } from 'vitest'
import type { TroubleMessage } from '#contract/errors.ts'
import { createSettlingWatch, settlesWithinS } from '#engine/bench/warnings/settlingWatch.ts'

function watched() {
  const told: TroubleMessage[] = []
  return { told, watch: createSettlingWatch((trouble) => told.push(trouble)) }
}

it('says once why the zero does not come', () => {
  const { told, watch } = watched()
  for (let s = 0; s <= 60; s++)
    watch.look(s < 5 ? 'the force is still rising' : 'something disturbs the signal', 100 + s)
  expect(told.map(({ code, message }) => [code, message])).toEqual([
    ['not-stable', 'The zero has not been taken for 10 seconds: something disturbs the signal.'],
  ])
})

it('waits ten seconds, from the last moment at which nothing was in the way', () => {
  const { told, watch } = watched()
  watch.look('it moves', 0)
  watch.look(null, 5)
  watch.look('it moves', 6)
  watch.look('it moves', 6 + settlesWithinS - 0.01)
  expect(told).toEqual([])
  watch.look('it moves', 6 + settlesWithinS)
  expect(told).toHaveLength(1)
})

it('may say it again of another device', () => {
  const { told, watch } = watched()
  for (const s of [0, 10]) watch.look('it moves', s)
  watch.restart()
  watch.look('it moves', 11)
  expect(told).toHaveLength(1)
  watch.look('it moves', 21)
  expect(told).toHaveLength(2)
})
