import { expect, it } from 'vitest'
import type { GlueUpDraft } from '#contract/programme/glueUpDraft.ts'
import { draftIn } from '#renderer/pages/programme/glueUp/glueUpDraft.ts'
import { emptyGlueUp } from '#renderer/pages/programme/glueUp/glueUpForm.ts'
import { emptyOwnBlocks } from '#renderer/pages/programme/glueUp/ownBlocks.ts'

const begun: GlueUpDraft = {
  ...{ archive: 'loft', studyId: 3, series: [['casein C1 loft', '4']], ages: [6, null] },
  own: { texts: { ...emptyOwnBlocks, count: '4' }, typedIn: { bondLineGapMm: 'US' } },
  texts: { texts: { ...emptyGlueUp('2026-11-02'), lots: { 'casein C1': 'C1-07' } }, typedIn: { temperatureC: 'US' } },
  cells: { 'block7 length': { text: '1 1/16', typedIn: 'US' } },
}
const stored = JSON.stringify(begun)

it('gives back what was begun in this archive, as it was typed', () => {
  expect(draftIn(stored, 'loft')).toEqual(begun)
})

it('goes on with nothing of another archive, and with nothing that has no size yet', () => {
  expect(draftIn(stored, 'bilge')).toBeNull()
  expect(draftIn(JSON.stringify({ ...begun, cells: {} }), 'loft')).toBeNull()
})

it.each([
  ['nothing is stored', null],
  ['half a text is stored', stored.slice(0, -20)],
  ['it is no draft', '7'],
  ['a field is missing', JSON.stringify({ ...begun, own: undefined })],
  ['a cell is empty', JSON.stringify({ ...begun, cells: { 'block7 length': null } })],
  ['a field is one that this version does not know', JSON.stringify({ ...begun, colour: 'red' })],
])('goes on with nothing where %s', (_, kept) => {
  expect(draftIn(kept, 'loft')).toBeNull()
})
