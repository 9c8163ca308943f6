/** One line of the benchmarks' table. */
export type Measurement = {
  /** What was measured, in words. */
  what: string
  value: number
  unit: string
  /** Named and measured in the same run. `times`: how many times better the value is, above 1 when it is better. */
  baseline: { name: string; value: number; times: number } | null
  /** The target in words, and whether it is met; null: measured for information only. */
  target: { text: string; met: boolean } | null
}

/** Why a benchmark cannot run here, in words. */
export type NotRun = { because: string }

/** Each resolves with its measurements; none asserts anything. */
export type Benchmark = () => Promise<Measurement[] | NotRun>

/** The value in the middle of an odd number of values, the mean of the two in the middle else. Throws RangeError for none. */
export function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b)
  const [low, high] = [sorted[(sorted.length - 1) >> 1], sorted[sorted.length >> 1]]
  if (low === undefined || high === undefined) throw new RangeError('median requires at least one value')
  return (low + high) / 2
}

/** Milliseconds that something takes in the middle of so many times, after one that is not counted. */
export async function medianMs(repeats: number, work: () => unknown): Promise<number> {
  const { work: value } = await medianMsOfEach(repeats, { work })
  return value
}

/** The same for works that are to be compared: they take turns, so that whatever else the machine does hits all alike. */
export async function medianMsOfEach<Name extends string>(
  repeats: number,
  works: Record<Name, () => unknown>,
): Promise<Record<Name, number>> {
  const names = Object.keys(works) as Name[]
  const times = Object.fromEntries(names.map((name) => [name, [] as number[]])) as Record<Name, number[]>
  for (let i = 0; i <= repeats; i++)
    for (const name of names) {
      globalThis.gc?.()
      const startedAt = performance.now()
      await works[name]()
      if (i > 0) times[name].push(performance.now() - startedAt)
    }
  return Object.fromEntries(names.map((name) => [name, median(times[name])])) as Record<Name, number>
}
