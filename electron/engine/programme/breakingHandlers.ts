import { Trouble } from '#contract/errors.ts'
import type { HandlersOf } from '#contract/procedures.ts'
import type { breakingProcedures } from '#contract/programme/breakingProcedures.ts'
import type { Bench } from '../bench/bench.ts'
import type { HandlerParts } from '../core/handlerParts.ts'

/** Breaking sessions: what can be broken, and a queue of it at the bench until the session is ended. */
export function breakingHandlers(
  { archive, clock }: HandlerParts,
  bench: Bench,
): HandlersOf<typeof breakingProcedures> {
  const noted = (note: string, by: string) => ({ recordedAt: clock.instant(), by, note })
  return {
    'breaking.list': () => archive.breakingSessions(),
    'breaking.get': ({ breakingSessionId }) => archive.breakingSession(breakingSessionId),
    'breaking.begin': (asked) => {
      const startedAt = clock.instant()
      return archive.beginBreakingSession({ ...asked, startedAt, seed: Date.parse(startedAt) })
    },
    'breaking.skip': async ({ specimenId, note, by }) => {
      const { breaking, specimen } = bench.state()
      if (breaking === null)
        throw new Trouble('conflict', 'No breaking session is open.', 'Begin one with the specimens that are due.')
      const { breakingSessionId } = breaking
      await archive.addBreakingEvent({ breakingSessionId, kind: 'skipped', specimenId, ...noted(note, by) })
      if (specimen?.specimenId === specimenId) await bench.next()
      return bench.state()
    },
    'breaking.end': ({ breakingSessionId, note, by }) =>
      archive.addBreakingEvent({ breakingSessionId, kind: 'ended', specimenId: null, ...noted(note, by) }),
    'breaking.reopen': ({ breakingSessionId, note, by }) =>
      archive.addBreakingEvent({ breakingSessionId, kind: 'reopened', specimenId: null, ...noted(note, by) }),
  }
}
