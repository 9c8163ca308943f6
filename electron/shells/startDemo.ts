import { demoSource } from '#contract/bench/source.ts'
import type { Engine } from '#engine/core/engine.ts'

/** Fills an empty archive with the demo study and connects the virtual amplifier, so that a stranger sees a break at once. */
export async function startDemo({ handlers }: Pick<Engine, 'handlers'>): Promise<void> {
  const { archive } = await handlers['app.info']({})
  // One that holds a part of the study, because the program was ended, is filled up.
  if (archive.specimens === 0 || archive.demo) await handlers['demo.fill']({})
  await handlers['bench.connect']({ source: demoSource })
}
