import type { Handlers } from '#contract/procedures.ts'
import type { HandlerParts } from '../core/handlerParts.ts'

type Names = Extract<keyof Handlers, `specimens.${string}`>

/** Specimens: listed, opened, added, corrected by a newer revision. */
export function specimenHandlers(parts: HandlerParts): Pick<Handlers, Names> {
  const { archive, clock } = parts
  return {
    'specimens.list': (query) => archive.listSpecimens(query),
    'specimens.get': ({ specimenId }) => archive.specimen(specimenId),
    'specimens.add': async ({ fields, by }) => {
      const added = await archive.addSpecimen(fields, clock.instant(), by)
      await parts.recordsChanged([added.specimenId], [])
      return added
    },
    'specimens.correct': async ({ specimenId, fields, by, reason }) => {
      const corrected = await archive.correctSpecimen(specimenId, fields, clock.instant(), by, reason)
      await parts.recordsChanged([specimenId], [])
      return corrected
    },
  }
}
