import { demoSource } from '#contract/bench/source.ts'
import { Trouble } from '#contract/errors.ts'
import { listQuery } from '#contract/listQuery.ts'
import type { Engine } from '#engine/core/engine.ts'

/**
 * Fills an empty archive with the demo study and connects the virtual amplifier, so that a stranger sees a break at once.
 * Rejects with Trouble `conflict` where the archive holds something of a person's own: that stays as it is.
 */
export async function startDemo({ handlers }: Pick<Engine, 'handlers'>): Promise<void> {
  const { archive, demo } = await handlers['app.info']({})
  if (!demo)
    throw new Trouble(
      'conflict',
      `${archive.path} was to be opened as the demo, but it holds records that are not invented.`,
      'They are safe, and nothing invented is added. For the demo, name a file that does not exist yet.',
    )
  // One that holds a part of the study, because the program was ended, is filled up.
  await handlers['demo.fill']({})
  await layWaitingBlock(handlers)
  await handlers['bench.connect']({ source: demoSource })
}

/** While the demo is filled, the bench follows its sessions, and the block that it holds in the end is a broken one. */
async function layWaitingBlock(handlers: Engine['handlers']): Promise<void> {
  const { specimen } = await handlers['bench.state']({})
  if (specimen === null || specimen.timesBroken === 0) return
  const { rows } = await handlers['specimens.list'](listQuery.parse({ status: 'waiting' }))
  // One whose break was set aside waits for a result, and not for the press
  const first = rows.find(({ timesBroken, withdrawn }) => timesBroken === 0 && withdrawn === null)
  if (first !== undefined) await handlers['bench.takeSpecimen']({ specimenId: first.specimenId, again: false })
}
