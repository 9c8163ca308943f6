// Held by tests/acquisition/virtual/port/virtualPort.spec.ts.
/** Time as the outside world gives it. Tests hand in one that they move. */
export type Clock = {
  /** Monotonic seconds; only differences mean anything. */
  nowS(): number
  /** Wall clock, ISO 8601 in UTC with milliseconds. */
  instant(): string
  /** Calls back once after so many seconds; the returned function calls it off. */
  after(seconds: number, call: () => void): () => void
}

export const systemClock: Clock = {
  nowS: () => performance.now() / 1000,
  instant: () => new Date().toISOString(),
  after: (seconds, call) => {
    const timer = setTimeout(call, seconds * 1000)
    return () => clearTimeout(timer)
  },
}
