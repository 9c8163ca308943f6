import { describe, expect, it } from 'vitest'
import type { BenchPhase } from '#contract/bench/bench.ts'
import { createClient } from '#contract/wire/carrier.ts'
import { createStore } from '#renderer/host/store.ts'
import { keepLiveHistory } from '#renderer/parts/bench/liveHistory.ts'
import { leadS } from '#renderer/plots/live/liveView.ts'
import { createScriptedHost } from '#tests/fakes/scripted/scriptedHost.ts'

function setUp() {
  const scripted = createScriptedHost()
  let tell: (name: string, payload: unknown) => void = () => {}
  const client = createClient(
    {
      call: async () => ({}),
      subscribe(listener) {
        tell = listener
        return () => {}
      },
    },
    () => {},
  )
  const bench = createStore(scripted.bench() as ReturnType<typeof scripted.bench> | null)
  const history = keepLiveHistory({ client, bench })
  const frame = (...timeS: number[]) =>
    tell('live.frame', {
      timeS: Float64Array.from(timeS),
      force: Float64Array.from(timeS),
      unit: 'N',
      latest: timeS.at(-1) ?? null,
      loadRange: null,
      peak: null,
    })
  const phase = (next: BenchPhase) => bench.set({ ...scripted.bench(), phase: next })
  return { history, frame, phase, tell }
}

describe('keepLiveHistory', () => {
  it('keeps samples although no page shows them', () => {
    const { history, frame } = setUp()
    frame(1, 2, 3)
    expect(history.ring.length).toBe(3)
  })

  it('remembers where the capture began until the bench waits again', () => {
    const { history, frame, phase } = setUp()
    frame(1, 10)
    phase('loading')
    frame(11, 12)
    phase('loading')
    expect(history.captureFromS()).toBe(10 - leadS)
    phase('broke')
    expect(history.captureFromS()).toBe(10 - leadS)
    phase('waiting')
    expect(history.captureFromS()).toBeNull()
  })

  it('forgets a capture of a stream that began again', () => {
    const { history, frame, phase } = setUp()
    frame(50)
    phase('loading')
    frame(1)
    expect(history.captureFromS()).toBeNull()
  })

  it('does not mix counts with newtons', () => {
    const { history, frame, tell } = setUp()
    frame(1, 2)
    tell('live.frame', {
      timeS: Float64Array.of(3),
      force: Float64Array.of(9),
      unit: 'counts',
      latest: 9,
      loadRange: null,
      peak: null,
    })
    expect(history.ring.length).toBe(1)
  })
})
