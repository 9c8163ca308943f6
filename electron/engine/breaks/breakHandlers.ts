import type { BreakRecord } from '#contract/breaks/break.ts'
import type { Decision, SetAsideCause } from '#contract/breaks/decision.ts'
import type { reviewProcedures } from '#contract/breaks/reviewProcedures.ts'
import type { Handlers } from '#contract/procedures.ts'
import type { HandlerParts } from '../core/handlerParts.ts'
import { drawnCurve } from './drawnCurve.ts'

type Names = Exclude<Extract<keyof Handlers, `breaks.${string}`>, keyof typeof reviewProcedures>

/** Breaks: listed, opened, drawn, assessed, and overruled by a decision that stands beside them. */
export function breakHandlers(parts: HandlerParts): Pick<Handlers, Names> {
  const { archive, clock } = parts

  async function decide(
    breakId: number,
    kind: Decision['kind'],
    specimenId: number | null,
    { by, reason, cause = null }: { by: string; reason: string; cause?: SetAsideCause | null },
  ): Promise<BreakRecord> {
    const before = await archive.break(breakId)
    await archive.addDecision({ breakId, kind, specimenId, by, reason, cause, recordedAt: clock.instant() })
    const touched = [before.summary.specimenId, specimenId].filter((id) => id !== null)
    await parts.recordsChanged([...new Set(touched)], [breakId])
    return archive.break(breakId)
  }

  return {
    'breaks.list': (query) => archive.listBreaks(query),
    'breaks.get': ({ breakId }) => archive.break(breakId),
    'breaks.curve': async ({ breakId, fromS, toS, maxPoints }) =>
      drawnCurve(await archive.break(breakId), await archive.readCurve(breakId), { fromS, toS, maxPoints }),
    'breaks.assess': async ({ breakId, by, woodFailurePercent, failurePattern, note }) => {
      const recordedAt = clock.instant()
      await archive.addAssessment({ breakId, by, woodFailurePercent, failurePattern, note, recordedAt })
      const record = await archive.break(breakId)
      const { specimenId } = record.summary
      await parts.recordsChanged(specimenId === null ? [] : [specimenId], [breakId])
      return record
    },
    'breaks.setAside': ({ breakId, ...signature }) => decide(breakId, 'set-aside', null, signature),
    'breaks.takeBack': ({ breakId, ...signature }) => decide(breakId, 'taken-back', null, signature),
    'breaks.reassign': ({ breakId, specimenId, ...signature }) => decide(breakId, 'reassigned', specimenId, signature),
  }
}
