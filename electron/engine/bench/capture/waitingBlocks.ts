import type { SampleBlock } from '#contract/breaks/curve.ts'

/** Blocks of one capture on their way to the disk. */
export type WaitingBlocks = {
  add(block: SampleBlock): void
  /** Stores all that wait, as one block; what is not stored goes on waiting. */
  store(): Promise<void>
}

/**
 * Blocks that come while the disk is busy are stored together with the next commit, so that a slow disk never falls behind by
 * more than a commit and what comes during it, however many blocks there are. `wake` is called when one begins to wait.
 */
export function createWaitingBlocks(append: (block: SampleBlock) => Promise<void>, wake: () => void): WaitingBlocks {
  const blocks: SampleBlock[] = []
  let woken = false
  return {
    add(block) {
      blocks.push(block)
      if (woken) return
      woken = true
      wake()
    },
    async store() {
      woken = false
      const { length } = blocks
      if (length === 0) return
      await append(joined(blocks))
      blocks.splice(0, length)
    },
  }
}

function joined(blocks: readonly SampleBlock[]): SampleBlock {
  if (blocks.length === 1) return blocks[0]!
  const samples = blocks.reduce((sum, { timeUs }) => sum + timeUs.length, 0)
  const whole = { timeUs: new Float64Array(samples), readings: new Float64Array(samples) }
  let start = 0
  for (const { timeUs, readings } of blocks) {
    whole.timeUs.set(timeUs, start)
    whole.readings.set(readings, start)
    start += timeUs.length
  }
  return whole
}
