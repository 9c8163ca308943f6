import { expect, it } from 'vitest'
import { overviewFilter } from '#contract/findings/overview.ts'
import { defaultPreferences } from '#contract/settings/settings.ts'
import { overviewOf } from '#domain/findings/overview/overviewOf.ts'
import type { HandlerParts } from '#engine/core/handlerParts.ts'
import { overviewHandlers } from '#engine/findings/overviewHandlers.ts'

const filter = overviewFilter.parse({ exposures: ['loft'] })
const asked = { filter, view: { kind: 'blocks' as const }, title: 'Loft' }
const archive = { preferences: async () => defaultPreferences } as unknown as HandlerParts['archive']
// The thread that stores what a capture brings is not asked for blocks
const reader = { overview: async () => overviewOf([], filter) } as unknown as HandlerParts['archive']
const reading: HandlerParts['reading'] = { ask: (read) => read(reader), close: async () => {} }
const clock = { instant: () => '2031-05-02T09:30:00.000Z' } as HandlerParts['clock']

it('prints what is asked for, and says so where nothing prints', async () => {
  const printPdf = async (html: string) => new TextEncoder().encode(html)
  const { bytes } = await overviewHandlers({ archive, reading, clock, printPdf })['overview.pdf'](asked)
  expect(new TextDecoder().decode(bytes)).toContain('<p>Loft, 2 May 2031.</p>')
  await expect(overviewHandlers({ archive, reading, clock })['overview.pdf'](asked)).rejects.toMatchObject({
    code: 'unsupported',
  })
})
