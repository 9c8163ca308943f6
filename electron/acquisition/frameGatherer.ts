import type { LiveFrame } from '#contract/bench/bench.ts'
import { thinByMinMax } from '#domain/signal/stream/thinning.ts'

/** Gathers live samples until the next frame is due. */
export type FrameGatherer = {
  push(timeS: number, force: number): void
  /** The same for the first so many of a batch. */
  add(timeS: Float64Array, force: Float64Array, count: number): void
  /** The frame when one is due, else null. */
  take(nowS: number, unit: LiveFrame['unit'], peak: number | null): LiveFrame | null
  clear(): void
}

const everyS = 1 / 30
/** Points of one frame at most: more than a screen has columns for a thirtieth of a second. */
const mostPoints = 64

/** About 30 frames a second, thinned so that highest and lowest sample stay. */
export function createFrameGatherer(): FrameGatherer {
  let timeS = new Float64Array(512)
  let force = new Float64Array(512)
  let length = 0
  let lastS = Number.NEGATIVE_INFINITY

  function makeRoom(more: number): void {
    let room = timeS.length
    while (room < length + more) room *= 2
    if (room === timeS.length) return
    const larger = (array: Float64Array) => {
      const moved = new Float64Array(room)
      moved.set(array)
      return moved
    }
    timeS = larger(timeS)
    force = larger(force)
  }

  return {
    push(time, value) {
      makeRoom(1)
      timeS[length] = time
      force[length] = value
      length += 1
    },
    add(times, forces, count) {
      makeRoom(count)
      for (let i = 0; i < count; i++) {
        timeS[length + i] = times[i]!
        force[length + i] = forces[i]!
      }
      length += count
    },
    take(nowS, unit, peak) {
      if (length === 0 || nowS - lastS < everyS) return null
      lastS = nowS
      const gathered = { timeS: timeS.subarray(0, length), force: force.subarray(0, length) }
      const thin = thinByMinMax(gathered, mostPoints)
      const frame = {
        timeS: thin.timeS.slice(),
        force: thin.force.slice(),
        unit,
        latest: force[length - 1]!,
        peak,
      }
      length = 0
      return frame
    },
    clear() {
      length = 0
    },
  }
}
