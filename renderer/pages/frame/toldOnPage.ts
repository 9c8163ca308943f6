import type { TroubleMessage } from '#contract/errors.ts'
import type { BenchState } from '#contract/records/bench.ts'
import type { Route } from './route.ts'

/** Whether a page says the same beside what it concerns, so that the frame need not say it too. */
export function isToldOnPage(
  { message }: TroubleMessage,
  { page }: Route,
  { connection, storageProblem }: Pick<BenchState, 'connection' | 'storageProblem'>,
): boolean {
  const ofConnection = (page === 'bench' || page === 'connect') && connection.problem?.message === message
  return ofConnection || (page === 'bench' && storageProblem?.message === message)
}
