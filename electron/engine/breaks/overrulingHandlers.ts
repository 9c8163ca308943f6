import type { BreakRecord } from '#contract/breaks/break.ts'
import type { NewDecision } from '#contract/breaks/decision.ts'
import { Trouble } from '#contract/errors.ts'
import type { Handlers } from '#contract/procedures.ts'
import type { Signature } from '#contract/signature.ts'
import { pickedSample, prematureSample } from '#domain/strength/overruling.ts'
import type { HandlerParts } from '../core/handlerParts.ts'

type Names = 'breaks.pickPeak' | 'breaks.declarePremature' | 'breaks.peakAsFound'

/** A person's word in place of the peak that the program found. The curve and every result stay as they are. */
export function overrulingHandlers(parts: HandlerParts): Pick<Handlers, Names> {
  const { archive, clock } = parts

  async function say(
    breakId: number,
    word: Pick<NewDecision, 'kind' | 'sample'>,
    { by, reason }: Signature,
  ): Promise<BreakRecord> {
    await archive.addDecision({ breakId, specimenId: null, by, reason, recordedAt: clock.instant(), ...word })
    const record = await archive.break(breakId)
    const { specimenId } = record.summary
    await parts.recordsChanged(specimenId === null ? [] : [specimenId], [breakId])
    return record
  }

  return {
    'breaks.pickPeak': async ({ breakId, timeS, ...signature }) => {
      const sample = pickedSample(await archive.break(breakId), await archive.readCurve(breakId), timeS)
      return say(breakId, { kind: 'peak-picked', sample }, signature)
    },
    'breaks.declarePremature': async ({ breakId, ...signature }) => {
      const sample = prematureSample(await archive.break(breakId), await archive.readCurve(breakId))
      return say(breakId, { kind: 'premature-failure', sample }, signature)
    },
    'breaks.peakAsFound': async ({ breakId, ...signature }) => {
      const { summary } = await archive.break(breakId)
      if (summary.overruled === null)
        throw new Trouble(
          'conflict',
          `The peak of break ${breakId} is the one that was found.`,
          'Nothing is to be taken back.',
        )
      return say(breakId, { kind: 'peak-as-found' }, signature)
    },
  }
}
