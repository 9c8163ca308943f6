import { Trouble } from '#contract/errors.ts'
import type { HandlersOf } from '#contract/procedures.ts'
import type { reevaluationProcedures } from '#contract/reevaluation/procedures.ts'
import type { Bench } from '../bench/bench.ts'
import type { HandlerParts } from '../core/handlerParts.ts'
import type { Reevaluations } from './reevaluations.ts'

/**
 * Adopting takes some 50 µs a result, and no sample reaches the disk meanwhile: beyond so many it would keep those of a
 * running capture waiting for longer than a crash may cost.
 */
const mostWhileLoading = 5000

/** Breaks evaluated once more: begun, looked at, and adopted or dropped by one decision. */
export function reevaluationHandlers(
  { archive, clock }: HandlerParts,
  bench: Pick<Bench, 'state'>,
  reevaluations: Reevaluations,
): HandlersOf<typeof reevaluationProcedures> {
  /** To look at what there is, it does not matter that an end finds no room on the disk yet. */
  const settled = () => reevaluations.settle().catch(() => {})
  return {
    'reevaluations.begin': (request) => reevaluations.begin(request),
    'reevaluations.list': async () => {
      await settled()
      return archive.reevaluations()
    },
    'reevaluations.get': async ({ reevaluationId }) => {
      await settled()
      return archive.reevaluation(reevaluationId)
    },
    'reevaluations.changes': (query) => archive.reevaluationChanges(query),
    'reevaluations.decide': async (decision) => {
      await reevaluations.settle()
      const { evaluated } = await archive.reevaluation(decision.reevaluationId)
      if (evaluated > mostWhileLoading && bench.state().phase === 'loading')
        throw new Trouble(
          'conflict',
          `A break is being recorded, and putting ${evaluated} results in force would keep its samples from the disk.`,
          'Decide again when it has ended.',
        )
      return (await archive.decideReevaluation({ ...decision, recordedAt: clock.instant() })).summary
    },
  }
}
