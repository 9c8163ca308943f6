/** Lines that were no reading: counted, and told with the newest of them. */
export type RejectedLines = {
  add(line: Uint8Array): void
  /** Calls back with how many came since the last time, if any did, and the newest. */
  tell(listener: (count: number, newest: Uint8Array) => void): void
  count(): number
  /** The newest as text, for people. */
  example(): string | null
}

/** None yet. */
export function createRejectedLines(): RejectedLines {
  let count = 0
  let untold = 0
  let newest: Uint8Array | null = null
  return {
    add(line) {
      count += 1
      untold += 1
      newest = line
    },
    tell(listener) {
      if (untold === 0 || newest === null) return
      const told = untold
      untold = 0
      listener(told, newest)
    },
    count: () => count,
    example: () => (newest === null ? null : printableText(newest)),
  }
}

/** Bytes as people can read them: what is no printable ASCII becomes a middle dot. */
export function printableText(bytes: Uint8Array): string {
  return Array.from(bytes, (byte) => (byte >= 32 && byte < 127 ? String.fromCharCode(byte) : '·')).join('')
}
