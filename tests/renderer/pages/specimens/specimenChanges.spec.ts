import { expect, it } from 'vitest'
import { changedFields } from '#renderer/pages/specimens/specimenChanges.ts'
import { createScriptedHost } from '#tests/fakes/scripted/scriptedHost.ts'

it('names the fields that a correction changed', async () => {
  const host = createScriptedHost()
  const { fields } = host.specimens[0]!
  await host.handlers['specimens.correct']({
    specimenId: 1,
    fields: { ...fields, areaMm2: 606, lot: 'bottle 4' },
    by: 'a',
    reason: 'b',
  })
  const { revisions } = await host.handlers['specimens.get']({ specimenId: 1 })
  expect(changedFields(revisions[0]!, revisions[1]!)).toEqual(['lot', 'areaMm2'])
})
