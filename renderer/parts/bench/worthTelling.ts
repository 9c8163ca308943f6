import type { BenchState } from '#contract/bench/bench.ts'
import type { TroubleMessage } from '#contract/errors.ts'
import type { Route } from '../../routes/route.ts'

/** Whether the frame must say a trouble: not when the page says the same beside what it concerns, nor of a lost device that is back or was disconnected on purpose since. */
export function isWorthTelling(
  { code, message }: TroubleMessage,
  { page }: Route,
  { connection, storageProblem }: Pick<BenchState, 'connection' | 'storageProblem'>,
): boolean {
  if (code === 'port-lost' && connection.status !== 'lost') return false
  if ((page === 'bench' || page === 'connect') && connection.problem?.message === message) return false
  return !(page === 'bench' && storageProblem?.message === message)
}
