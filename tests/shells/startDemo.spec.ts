import { expect, test } from 'vitest'
import { startDemo } from '#shells/startDemo.ts'
import { benchAtRest, freshInfo } from '#tests/fakes/benchAtRest.ts'
import { createScriptedEngine } from '#tests/fakes/scripted/scriptedEngine.ts'

function demoEngine(demo: boolean) {
  const done: unknown[] = []
  const engine = createScriptedEngine({
    'app.info': async () => ({ ...freshInfo, demo }),
    'demo.fill': async () => {
      done.push('filled')
      return freshInfo.archive
    },
    'bench.state': async () => benchAtRest,
    'bench.connect': async ({ source }) => {
      done.push(source.kind)
      return benchAtRest
    },
  })
  return { engine, done }
}

test('the demo is filled, or filled up, before the virtual amplifier is connected', async () => {
  const { engine, done } = demoEngine(true)
  await startDemo(engine)
  expect(done).toEqual(['filled', 'virtual'])
})

test('an archive that holds records of a person’s own is left as it is', async () => {
  const { engine, done } = demoEngine(false)
  await expect(startDemo(engine)).rejects.toMatchObject({
    code: 'conflict',
    message: expect.stringContaining('not invented'),
  })
  expect(done).toEqual([])
})
