// Held by tests/engine/createEngine.spec.ts.
import type { benchProcedures } from '#contract/bench/procedures.ts'
import { Trouble } from '#contract/errors.ts'
import type { HandlersOf, ParsedInputOf } from '#contract/procedures.ts'
import type { HandlerParts } from '../core/handlerParts.ts'
import type { Bench } from './bench.ts'
import { benchTaken, recordingNow } from './benchOccupation.ts'

/** Ports and the bench. Every change answers with the state that follows from it. */
export function benchHandlers(
  parts: HandlerParts,
  bench: Bench,
  changePreferences: (change: ParsedInputOf<'preferences.set'>) => Promise<unknown>,
): HandlersOf<typeof benchProcedures> {
  /** A port can be heard by one at a time: who wants to listen to it wants the connection ended, but no capture with it. */
  async function letGoOf(path: string): Promise<void> {
    const { connection, phase, busyWith } = bench.state()
    const { source, status } = connection
    if (status === 'closed' || source?.kind !== 'serial' || source.path !== path) return
    if (phase === 'loading' || busyWith !== null)
      throw new Trouble(
        'conflict',
        `The port ${path} is in use here. ${busyWith === null ? recordingNow : benchTaken}`,
        'Finish that first, then listen.',
      )
    await bench.disconnect()
  }

  return {
    'ports.list': () => parts.listPorts(),
    'ports.listen': async ({ path, baudRate, seconds }) => {
      await letGoOf(path)
      return parts.listen(path, baudRate, seconds)
    },
    'bench.state': async () => bench.state(),
    'bench.connect': async ({ source }) => {
      await parts.demo.requireFor(source)
      await bench.connect(source)
      await changePreferences({ source })
      return bench.state()
    },
    'bench.disconnect': async () => {
      await bench.disconnect()
      // The session is over: from now on the file alone holds all of it.
      await parts.archive.settle()
      return bench.state()
    },
    'bench.tare': async () => {
      bench.tare()
      return bench.state()
    },
    'bench.arm': async ({ armed }) => {
      bench.arm(armed)
      return bench.state()
    },
    'bench.takeSpecimen': async ({ specimenId, again }) => {
      await bench.take(specimenId, again)
      return bench.state()
    },
    'bench.nextSpecimen': async () => {
      await bench.next()
      return bench.state()
    },
    'bench.putVirtualWeights': async ({ forceN }) => {
      bench.putVirtualWeights(forceN)
      return {}
    },
    'bench.loadVirtual': async () => {
      bench.loadVirtual()
      return bench.state()
    },
  }
}
