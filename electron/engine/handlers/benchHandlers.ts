import type { Handlers } from '#contract/procedures.ts'
import type { HandlerParts } from './handlerParts.ts'

type Names = Extract<keyof Handlers, `bench.${string}` | `ports.${string}`>

/** Ports and the bench. Every change answers with the state that follows from it. */
export function benchHandlers(parts: HandlerParts): Pick<Handlers, Names> {
  const { bench } = parts
  return {
    'ports.list': () => parts.listPorts(),
    'ports.listen': ({ path, baudRate, seconds }) => parts.listen(path, baudRate, seconds),
    'bench.state': async () => bench.state(),
    'bench.connect': async ({ source }) => {
      await bench.connect(source)
      await parts.changePreferences({ source })
      return bench.state()
    },
    'bench.disconnect': async () => {
      await bench.disconnect()
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
    'bench.takeSpecimen': async ({ specimenId }) => {
      await bench.take(specimenId)
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
