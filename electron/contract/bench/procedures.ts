import * as z from 'zod'
import { deed, question } from '../procedure.ts'
import { finite, id, nothing, place } from '../values.ts'
import { benchState, listening, serialPort } from './bench.ts'
import { sourceChoice } from './source.ts'

/** Ports and the bench. Every change answers with the state that follows from it. */
export const benchProcedures = {
  'ports.list': question({ input: nothing, output: z.array(serialPort), reads: () => [] }),
  'ports.listen': deed({
    input: z.strictObject({
      path: place,
      baudRate: z.int().positive(),
      seconds: z.number().min(0.2).max(30),
    }),
    output: listening,
  }),

  'bench.state': question({ input: nothing, output: benchState, reads: () => [] }),
  'bench.connect': deed({ input: z.strictObject({ source: sourceChoice }), output: benchState }),
  'bench.disconnect': deed({ input: nothing, output: benchState }),
  'bench.tare': deed({ input: nothing, output: benchState }),
  'bench.arm': deed({ input: z.strictObject({ armed: z.boolean() }), output: benchState }),
  /** null: the next capture belongs to no specimen. `again`: the person knows that it broke before; else that is a conflict. */
  'bench.takeSpecimen': deed({
    input: z.strictObject({ specimenId: id.nullable(), again: z.boolean().default(false) }),
    output: benchState,
  }),
  'bench.nextSpecimen': deed({ input: nothing, output: benchState }),
  /** For a virtual amplifier only: loads the next virtual specimen now. */
  'bench.loadVirtual': deed({ input: nothing, output: benchState }),
  /** For a virtual amplifier only: hangs weights of so many newtons on its cell, 0 takes them off. */
  'bench.putVirtualWeights': deed({ input: z.strictObject({ forceN: finite.min(0).max(25_000) }), output: nothing }),
}
