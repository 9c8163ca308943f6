import { expect, test } from 'vitest'
import type { LiveFrame } from '#contract/bench/bench.ts'
import { defaultPreferences } from '#contract/settings/settings.ts'
import { createOnceEmpty } from '#engine/bench/capture/onceEmpty.ts'
import { sourceFacts } from '#engine/bench/device/sourceFacts.ts'
import { benchAtRest } from '#tests/fakes/benchAtRest.ts'

function bench() {
  const state = { busy: false, awaitsEmpty: false, did: [] as string[] }
  const onceEmpty = createOnceEmpty({
    link: () => ({
      signal: () => ({ ...benchAtRest.signal, noise: 1, startThreshold: 20 }),
      facts: () => sourceFacts(null, null, defaultPreferences, null),
      preferencesChanged: () => state.did.push('preferences'),
    }),
    occupation: {
      busyWith: () => (state.busy ? 'calibration' : null),
      awaitsEmpty: () => state.awaitsEmpty,
      empty: () => state.did.push('arm'),
    },
    cleared: () => state.did.push('cleared'),
  })
  const force = (latest: number) => onceEmpty.frame({ latest } as LiveFrame)
  return { state, onceEmpty, force }
}

test('tells once that the broken specimen is out of the press', () => {
  const { state, onceEmpty, force } = bench()
  onceEmpty.captureEnded(true)
  force(800)
  expect(state.did).toEqual([])
  force(10)
  force(5)
  expect(state.did).toEqual(['cleared'])
})

test('tells nothing of a specimen that was only let go, nor of one that is loaded again', () => {
  const { state, onceEmpty, force } = bench()
  onceEmpty.captureEnded(false)
  force(10)
  onceEmpty.captureEnded(true)
  onceEmpty.captureBegan()
  force(10)
  expect(state.did).toEqual([])
})

test('goes on under new preferences at once, but not while weights may hang on the cell', () => {
  const { state, onceEmpty, force } = bench()
  onceEmpty.preferencesChanged()
  expect(state.did.splice(0)).toEqual(['preferences'])
  state.busy = true
  onceEmpty.preferencesChanged()
  force(0)
  expect(state.did).toEqual([])
  Object.assign(state, { busy: false, awaitsEmpty: true })
  force(400)
  expect(state.did).toEqual([])
  force(1)
  expect(state.did).toEqual(['arm', 'preferences'])
})
