import { expect, test } from 'vitest'
import { startDemo } from '#shells/startDemo.ts'
import { benchAtRest, freshInfo } from '#tests/fakes/benchAtRest.ts'
import { createScriptedEngine } from '#tests/fakes/scripted/scriptedEngine.ts'

function demoEngine(specimens: number, demo = false) {
  const done: unknown[] = []
  const archive = { ...freshInfo.archive, specimens, demo }
  const engine = createScriptedEngine({
    'app.info': async () => ({ ...freshInfo, archive }),
    'demo.fill': async () => {
      done.push('filled')
      return archive
    },
    'bench.connect': async ({ source }) => {
      done.push(source.kind)
      return benchAtRest
    },
  })
  return { engine, done }
}

test('an empty archive is filled before the virtual amplifier is connected', async () => {
  const { engine, done } = demoEngine(0)
  await startDemo(engine)
  expect(done).toEqual(['filled', 'virtual'])
})

test('an archive that holds specimens of the demo is filled up, in case the program was ended in the middle', async () => {
  const { engine, done } = demoEngine(24, true)
  await startDemo(engine)
  expect(done).toEqual(['filled', 'virtual'])
})

test('an archive that holds specimens of its own is not filled', async () => {
  const { engine, done } = demoEngine(12)
  await startDemo(engine)
  expect(done).toEqual(['virtual'])
})
