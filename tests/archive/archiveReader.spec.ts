import { join } from 'node:path'
import { expect, onTestFinished, test } from 'vitest'
import { openReader, readerOf } from '#archive/archiveReader.ts'
import { addAssessment } from '#archive/breaks/assessments.ts'
import { openHere } from '#archive/openHere.ts'
import { archiveInMemory, morning, storeBreak, temporaryFolder } from './storedStudy.ts'

function study() {
  const path = join(temporaryFolder(), 'study.breakledger')
  const writer = openHere({ path, mode: 'write', program: 'test', instant: morning })
  storeBreak(writer.database, null)
  const reader = openReader({ path, program: 'test', instant: morning })
  onTestFinished(() => {
    reader.close()
    writer.close()
  })
  return { writer, reader, path }
}

const note = {
  breakId: 1,
  recordedAt: morning,
  by: 'bench',
  woodFailurePercent: null,
  failurePattern: null,
  note: 'clean',
} as const

test('answers at once what the archive can be asked, beside the program that writes', () => {
  const { writer, reader } = study()
  expect(reader.break(1).summary).toMatchObject({ peakN: 6000, note: '' })
  addAssessment(writer.database, note)
  expect(reader.break(1).summary.note).toBe('clean')
  expect(reader.readCurve(1).timeS).toHaveLength(500)
})

test('sees one moment of the archive, whatever is written meanwhile', () => {
  const { writer, reader } = study()
  const [before, after] = reader.atOneMoment(() => {
    const first = reader.break(1).assessments.length
    addAssessment(writer.database, note)
    return [first, reader.break(1).assessments.length]
  })
  expect([before, after]).toEqual([0, 0])
  expect(reader.break(1).assessments).toHaveLength(1)
})

test('throws a trouble that names the record, or the archive that is damaged', () => {
  const database = archiveInMemory()
  storeBreak(database, null)
  const reader = readerOf(database, 'study.breakledger')
  expect(() => reader.break(9)).toThrow(expect.objectContaining({ code: 'not-found' }))
  database.exec('DROP TRIGGER evaluation_is_never_changed')
  database.exec(`UPDATE evaluation SET events = '{}'`)
  expect(() => reader.break(1)).toThrow(
    expect.objectContaining({ code: 'archive-damaged', message: expect.stringContaining('study.breakledger') }),
  )
})

test('says what stands in the way of opening', () => {
  const path = join(temporaryFolder(), 'none.breakledger')
  expect(() => openReader({ path, program: 'test', instant: morning })).toThrow(
    expect.objectContaining({ code: 'archive-missing' }),
  )
})
