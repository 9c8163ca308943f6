import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { writes } from '#archive/methods.ts'
import { openHere } from '#archive/openHere.ts'
import { addSpecimen } from '#archive/specimens/specimens.ts'
import { verify } from '#archive/verify/verify.ts'
import { everyRow } from '../archive/core/olderArchive.ts'
import { storeCalibrations } from '../archive/storedCalibration.ts'
import { storeReevaluation } from '../archive/storedReevaluation.ts'
import { header, morning, rampAndFall, session, specimenFields, storeBreak } from '../archive/storedStudy.ts'

const schemaText = /CREATE (TABLE|INDEX|TRIGGER|UNIQUE INDEX)/g

/** Flips one bit in each of so many copies of an archive (1000), half anywhere, half in header and schema: none may go unseen that changes what is read or written. */
export async function soak(words: readonly string[]): Promise<boolean> {
  const tries = Number(words[0] ?? 1000)
  if (!Number.isInteger(tries) || tries < 2) throw new RangeError('bitFlips takes a number of flips')
  const folder = mkdtempSync(join(tmpdir(), 'breakledger-flips-'))
  const count = { found: 0, harmless: 0, broke: 0 }
  try {
    const path = join(folder, 'study.breakledger')
    const sound = writtenArchive(path)
    const places = schemaPlaces(sound)
    const expected = readAndWritten(path, sound)
    for (let i = 0; i < tries; i++) {
      const byte =
        i % 2 === 0 ? Math.floor(Math.random() * sound.length) : places[Math.floor(Math.random() * places.length)]!
      const bit = Math.floor(Math.random() * 8)
      const flipped = Buffer.from(sound)
      flipped[byte]! ^= 1 << bit
      const seen = readAndWritten(path, flipped)
      if (seen === null) count.found += 1
      else if (seen === expected) count.harmless += 1
      else {
        count.broke += 1
        console.log(`byte ${byte}, bit ${bit}: sound, but something else is read or written`)
      }
    }
  } finally {
    rmSync(folder, { recursive: true, force: true })
  }
  const { found, harmless, broke } = count
  console.log(`tried ${tries} / held ${found + harmless} (${found} found, ${harmless} without effect) / broke ${broke}`)
  return broke === 0
}

/** With every kind of record, and a capture that was running when the program died. */
function writtenArchive(path: string): Buffer {
  const { database, close } = openHere({ path, mode: 'write', program: 'soak', instant: morning })
  addSpecimen(database, specimenFields('C1-LL-1'), morning, 'bench')
  for (const specimen of [1, null, null]) storeBreak(database, specimen, rampAndFall(3000, 500_000))
  writes.keepRejectedLines(database, 1, morning, 3, new TextEncoder().encode('?'))
  storeCalibrations(database)
  storeReevaluation(database, [1, 2], { kind: 'adopted' })
  const word = { recordedAt: morning, by: 'bench', reason: 'slipped', specimenId: null }
  writes.addDecision(database, { ...word, breakId: 3, kind: 'set-aside', cause: 'other' })
  const { sessionId } = writes.beginSession(database, session)
  const { breakId } = writes.beginBreak(database, header(sessionId, null))
  writes.appendSamples(database, breakId, rampAndFall(100, 400_000))
  close()
  return readFileSync(path)
}

/** The header, and every byte of a text of the schema. */
function schemaPlaces(bytes: Buffer): number[] {
  const places = Array.from({ length: 100 }, (_, i) => i)
  for (const { index } of bytes.toString('latin1').matchAll(schemaText))
    for (let i = 0; i < 300 && index + i < bytes.length; i++) places.push(index + i)
  return places
}

/** All that is read, then all that is there after a specimen and a break were written; null: the damage was found. */
function readAndWritten(path: string, bytes: Buffer): string | null {
  for (const ending of ['-wal', '-shm', '-lock']) rmSync(path + ending, { force: true })
  writeFileSync(path, bytes)
  const open = (mode: 'read' | 'write') => openHere({ path, mode, program: 'soak', instant: morning })
  try {
    const reader = open('read')
    try {
      if (!verify(reader.database, () => {}).sound) return null
    } finally {
      reader.close()
    }
    const writer = open('write')
    try {
      const read = JSON.stringify(everyRow(writer.database))
      addSpecimen(writer.database, specimenFields('C1-LL-9'), morning, 'bench')
      storeBreak(writer.database, 2)
      return read + JSON.stringify(everyRow(writer.database))
    } finally {
      writer.close()
    }
  } catch {
    // Refused with a trouble: found.
    return null
  }
}
