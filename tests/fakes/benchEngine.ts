import { setImmediate } from 'node:timers/promises'
import type { ByteSource } from '#acquisition/byteSource.ts'
import type { Clock } from '#acquisition/clock.ts'
import { createVirtualSource, type VirtualSourceOptions } from '#acquisition/virtual/virtualSource.ts'
import type { Archive } from '#archive/archive.ts'
import type { BenchState } from '#contract/bench/bench.ts'
import { sourceChoice } from '#contract/bench/source.ts'
import type { EventName, PayloadOf } from '#contract/events.ts'
import { createSteppedClock, type SteppedClock } from '#engine/core/steppedClock.ts'
import { createEngine, type EngineOptions } from '#engine/createEngine.ts'

export const virtualChoice = sourceChoice.parse({ kind: 'virtual' })
export const serialChoice = sourceChoice.parse({ kind: 'serial', path: '/dev/ttyTEST', lineFormat: { name: 'number' } })

/**
 * An engine on a given archive, with a virtual press and a clock that the test moves: opened for the demo, unless the source is
 * another.
 */
export async function benchEngine(
  archive: Archive,
  press: Partial<VirtualSourceOptions> = {},
  options: EngineOptions & { openSource?: (clock: Clock) => ByteSource } = {},
) {
  const clock: SteppedClock = createSteppedClock(Date.UTC(2031, 3, 6, 8))
  const engine = await createEngine(
    {
      archive,
      clock,
      openSource: () =>
        options.openSource?.(clock) ??
        createVirtualSource(
          {
            ...{ scenario: 'brittle', rateHz: 80, seed: 1, knocksPerHour: 0, restS: [4, 6] },
            specimen: (drawn) => ({ ...drawn, loadingS: 6 }),
            ...press,
          },
          clock,
        ),
      listPorts: async () => [],
      listen: async () => ({ lines: [], bytes: 0, linesPerSecond: null, proposal: null, fit: 0, advice: 'nothing' }),
      host: { host: 'direct', capabilities: [] },
      program: 'test',
    },
    { demo: options.openSource === undefined, ...options },
  )
  const heard: { name: EventName; payload: unknown; atS: number }[] = []
  const names: EventName[] = ['bench.state', 'records.changed', 'preferences.changed', 'trouble', 'task.progress']
  for (const name of names) engine.subscribe(name, (payload) => heard.push({ name, payload, atS: clock.nowS() }))

  return {
    engine,
    clock,
    handlers: engine.handlers,
    heardOf: <N extends EventName>(name: N) =>
      heard.filter((one) => one.name === name).map(({ payload }) => payload as PayloadOf<N>),
    timesOf: (name: EventName) => heard.filter((one) => one.name === name).map(({ atS }) => atS),
    /** Moves the clock until the bench shows it; fails after so many simulated seconds. */
    async until(test: (state: BenchState) => boolean, mostS = 300): Promise<BenchState> {
      for (const endS = clock.nowS() + mostS; clock.nowS() < endS; ) {
        const state = engine.bench.state()
        if (test(state)) return state
        clock.step(0.1)
        // While no capture runs the archive may take its time without the clock running ahead.
        if (state.phase !== 'loading') await engine.bench.written().catch(() => {})
        await setImmediate()
      }
      throw new Error(`not seen in ${mostS} s: ${JSON.stringify(engine.bench.state())}`)
    },
  }
}
