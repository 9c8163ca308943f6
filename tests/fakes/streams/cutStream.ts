import type { RandomStream } from '#domain/numbers/random.ts'

/** Cuts [0, count) into blocks of 1 to `longest`, each from and to. */
export function cutStream(random: RandomStream, count: number, longest: number): [number, number][] {
  const cuts: [number, number][] = []
  for (let from = 0; from < count; ) {
    const to = Math.min(count, from + random.wholeBetween(1, longest))
    cuts.push([from, to])
    from = to
  }
  return cuts
}

/** One block of a stream at its place in an array that holds nothing else but `garbage`, which nobody may look at. */
export function blockAlone(values: Float64Array, from: number, to: number, garbage: number): Float64Array {
  const alone = new Float64Array(values.length + 1).fill(garbage)
  alone.set(values.subarray(from, to), from)
  return alone
}

type TakesSamples = { take(timeS: Float64Array, force: Float64Array, from: number, to: number): unknown }

/** Hands over one sample, which is a block of one. */
export function takeOne(taker: TakesSamples, timeS: number, force: number): void {
  taker.take(Float64Array.of(timeS), Float64Array.of(force), 0, 1)
}
