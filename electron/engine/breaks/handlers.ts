import type { BreakRecord } from '#contract/breaks/break.ts'
import type { NewDecision } from '#contract/breaks/decision.ts'
import type { breakProcedures } from '#contract/breaks/procedures.ts'
import { Trouble } from '#contract/errors.ts'
import type { HandlersOf } from '#contract/procedures.ts'
import { pickedSample, prematureSample } from '#domain/strength/overruling.ts'
import type { HandlerParts } from '../core/handlerParts.ts'
import { type CurveViewName, curveViewHandlers } from './curveViewHandlers.ts'
import { drawnCurve } from './drawnCurve.ts'

/**
 * Breaks: listed, opened, assessed, and overruled by a decision that stands beside them: the curve and every result stay as
 * they are.
 */
export function breakHandlers(parts: HandlerParts): HandlersOf<typeof breakProcedures> {
  return { ...recordHandlers(parts), ...curveViewHandlers(parts) }
}

function recordHandlers(parts: HandlerParts): Omit<HandlersOf<typeof breakProcedures>, CurveViewName> {
  const { archive, clock } = parts

  async function decide(decision: Omit<NewDecision, 'recordedAt'>): Promise<BreakRecord> {
    await archive.addDecision({ ...decision, recordedAt: clock.instant() })
    return archive.break(decision.breakId)
  }

  return {
    'breaks.list': (query) => archive.listBreaks(query),
    'breaks.ids': (query) => archive.breakIds(query),
    'breaks.get': ({ breakId }) => archive.break(breakId),
    'breaks.curve': async ({ breakId, ...range }) =>
      drawnCurve(await archive.break(breakId), await archive.readCurve(breakId), range),
    'breaks.assess': async (assessment) => {
      await archive.addAssessment({ ...assessment, recordedAt: clock.instant() })
      return archive.break(assessment.breakId)
    },
    'breaks.setAside': (word) => decide({ ...word, kind: 'set-aside', specimenId: null }),
    'breaks.takeBack': (word) => decide({ ...word, kind: 'taken-back', specimenId: null }),
    'breaks.reassign': (word) => decide({ ...word, kind: 'reassigned' }),
    'breaks.pickPeak': async ({ timeS, ...word }) => {
      const sample = pickedSample(await archive.break(word.breakId), await archive.readCurve(word.breakId), timeS)
      return decide({ ...word, kind: 'peak-picked', specimenId: null, sample })
    },
    'breaks.declarePremature': async (word) => {
      const sample = prematureSample(await archive.break(word.breakId), await archive.readCurve(word.breakId))
      return decide({ ...word, kind: 'premature-failure', specimenId: null, sample })
    },
    'breaks.peakAsFound': async (word) => {
      const { summary } = await archive.break(word.breakId)
      if (summary.overruled === null)
        throw new Trouble(
          'conflict',
          `The peak of break ${word.breakId} is the one that was found.`,
          'Nothing is to be taken back.',
        )
      return decide({ ...word, kind: 'peak-as-found', specimenId: null })
    },
  }
}
