import { expect, it } from 'vitest'
import type { ArchiveReader } from '#archive/archiveReader.ts'
import { nextQuestion } from '#contract/findings/next.ts'
import { findingsAnswers, findingsMemory } from '#engine/findings/findingsAnswers.ts'
import { standIn } from '#tests/fakes/time/standIn.ts'

it('says what is to be done next by the day where the person is, as the list of pulls does', () => {
  const archive = { observations: () => [], pullSources: () => ({ rows: [] }) } as unknown as ArchiveReader
  const todayAt = (instant: string) =>
    findingsAnswers['findings.next'](archive, nextQuestion.parse({}), findingsMemory(), () => {}, instant).today
  standIn('Pacific/Auckland')
  expect(todayAt('2031-01-01T23:30:00.000Z')).toBe('2031-01-02')
})
