import type { RandomStream } from '#domain/numbers/random.ts'

const side = 256

/** A field of smooth noise about 0, at most 1 from it: a lattice of random heights one unit apart, joined smoothly. */
export function smoothNoise(random: RandomStream): (x: number, y: number) => number {
  const heights = Float32Array.from({ length: side * side }, () => 2 * random.unit() - 1)
  const ease = (t: number) => t * t * t * (t * (6 * t - 15) + 10)
  return (x, y) => {
    const left = Math.floor(x)
    const top = Math.floor(y)
    const at = (i: number, j: number) => heights[((top + j) & (side - 1)) * side + ((left + i) & (side - 1))]!
    const u = ease(x - left)
    const v = ease(y - top)
    return (1 - v) * ((1 - u) * at(0, 0) + u * at(1, 0)) + v * ((1 - u) * at(0, 1) + u * at(1, 1))
  }
}
