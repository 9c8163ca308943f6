import type { BenchState } from '#contract/bench/bench.ts'

/** How the device is connected, in words. */
export function connectionWords(connection: BenchState['connection']): string {
  switch (connection.status) {
    case 'closed':
      return 'Not connected'
    case 'opening':
      return 'Connecting'
    case 'open':
      return 'Connected'
    case 'lost':
      return 'Connection lost'
  }
}
