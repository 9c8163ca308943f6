import { expect, test } from 'vitest'
import { beginSession } from '#archive/bench/sessions.ts'
import { beginBreak } from '#archive/breaks/breaks.ts'
import { readBreakSummary } from '#archive/lists/summaries.ts'
import { addSpecimen } from '#archive/specimens/specimens.ts'
import { archiveInMemory, header, morning, session, specimenFields } from '../storedStudy.ts'

function begun(source: string, number: string | null) {
  const database = archiveInMemory()
  const fields = specimenFields(number ?? '', { demo: false })
  const specimenId = number === null ? null : addSpecimen(database, fields, morning, 'bench').specimenId
  const { sessionId } = beginSession(database, { ...session, source })
  const { breakId } = beginBreak(database, header(sessionId, specimenId))
  return readBreakSummary(database, breakId).summary
}

test('marks a break of a person’s own block that the virtual press made, in an archive that holds such already', () => {
  expect(begun('virtual amplifier: mixed', 'A-1')).toMatchObject({ demo: false, simulated: true })
})

test('leaves a measured break unmarked', () => {
  expect(begun('/dev/ttyUSB0 at 115200 baud', null).simulated).toBe(false)
})
