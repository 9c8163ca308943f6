/** Which point a key leads to; null: to none; undefined: the key has another use. */
export function nextReading(key: string, chosen: number | null, count: number): number | null | undefined {
  if (count === 0) return undefined
  if (key === 'Escape') return chosen === null ? undefined : null
  if (key === 'Home') return 0
  if (key === 'End') return count - 1
  const step = { ArrowRight: 1, ArrowDown: 1, ArrowLeft: -1, ArrowUp: -1 }[key]
  if (step === undefined) return undefined
  if (chosen === null) return step > 0 ? 0 : count - 1
  return Math.min(Math.max(chosen + step, 0), count - 1)
}
