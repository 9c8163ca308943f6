import type { Handlers } from '#contract/procedures.ts'
import type { Reevaluations } from '../reevaluations.ts'
import type { HandlerParts } from './handlerParts.ts'

type Names = Extract<keyof Handlers, `reevaluations.${string}`>

/** Breaks evaluated once more: begun, looked at, and adopted or dropped by one decision. */
export function reevaluationHandlers(parts: HandlerParts, reevaluations: Reevaluations): Pick<Handlers, Names> {
  const { archive, clock, emit } = parts
  return {
    'reevaluations.begin': (request) => reevaluations.begin(request),
    'reevaluations.list': () => archive.reevaluations(),
    'reevaluations.get': ({ reevaluationId }) => archive.reevaluation(reevaluationId),
    'reevaluations.changes': (query) => archive.reevaluationChanges(query),
    'reevaluations.decide': async (decision) => {
      const decided = await archive.decideReevaluation({ ...decision, recordedAt: clock.instant() })
      emit('reevaluations.changed', { reevaluationIds: [decision.reevaluationId] })
      await parts.recordsChanged(decided.specimenIds, decided.breakIds)
      return decided.summary
    },
  }
}
