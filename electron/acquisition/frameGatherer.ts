import type { LiveFrame } from '#contract/bench/bench.ts'
import { growingColumn } from '#domain/numbers/growingColumn.ts'
import { createLoadRange } from '#domain/signal/stream/loadRange.ts'
import { thinByMinMax } from '#domain/signal/stream/thinning.ts'

/** Gathers live samples until the next frame is due. */
export type FrameGatherer = {
  /** Adds samples [from, to) of arrays. */
  add(timeS: Float64Array, force: Float64Array, from: number, to: number): void
  /** The frame when one is due, else null. */
  take(nowS: number, unit: LiveFrame['unit'], peak: number | null): LiveFrame | null
  /** Noise SD of the force at rest; null: not known. */
  noise(noise: number | null): void
  clear(): void
}

const everyS = 1 / 30
/** Points of one frame at most: more than a screen has columns for a thirtieth of a second. */
const mostPoints = 64

/** About 30 frames a second, thinned so that highest and lowest sample stay. */
export function createFrameGatherer(): FrameGatherer {
  const timeS = growingColumn()
  const force = growingColumn()
  const range = createLoadRange()
  let lastS = Number.NEGATIVE_INFINITY

  function clear(): void {
    timeS.shorten(0)
    force.shorten(0)
  }

  return {
    add(times, forces, from, to) {
      timeS.append(times, from, to)
      force.append(forces, from, to)
    },
    take(nowS, unit, peak) {
      if (timeS.length() === 0 || nowS - lastS < everyS) return null
      lastS = nowS
      const gathered = { timeS: timeS.view(), force: force.view() }
      range.take(gathered.timeS, gathered.force, 0, gathered.force.length)
      const thin = thinByMinMax(gathered, mostPoints)
      const frame = {
        timeS: thin.timeS.slice(),
        force: thin.force.slice(),
        unit,
        latest: range.latest() ?? gathered.force.at(-1)!,
        loadRange: range.since(),
        peak,
      }
      clear()
      return frame
    },
    noise: (noise) => range.setNoise(noise ?? 0),
    clear,
  }
}
