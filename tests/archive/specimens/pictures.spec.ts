import { createHash } from 'node:crypto'
import { expect, test } from 'vitest'
import { takeTouched } from '#archive/core/touched.ts'
import { addPicture, addWoodPicture, pictureContent, pictures } from '#archive/specimens/pictures.ts'
import { addSpecimen } from '#archive/specimens/specimens.ts'
import { smallPictures } from '#tests/reference/faces/smallPictures.ts'
import { archiveInMemory, morning, specimenFields, storeBreak } from '../storedStudy.ts'

const ofBreak = { specimenId: null, breakId: 1 }
const made = { ...ofBreak, recordedAt: morning, by: 'bench', name: 'face a.png', mediaType: 'image/png' as const }
const reading = {
  attachmentId: 1,
  recordedAt: morning,
  by: 'bench',
  corners: [
    { x: 0.1, y: 0.1 },
    { x: 0.9, y: 0.1 },
    { x: 0.9, y: 0.9 },
    { x: 0.1, y: 0.9 },
  ],
  threshold: 50,
  method: 'test 1',
  maskWidth: 4,
  maskHeight: 2,
  mask: 'f0',
  proposedPercent: 50,
  decidedPercent: 55,
}

function study() {
  const database = archiveInMemory()
  const { specimenId } = addSpecimen(database, specimenFields('C1-LL-01'), morning, 'bench')
  storeBreak(database, specimenId)
  return database
}

test('gives a picture back byte by byte, under its hash', () => {
  const database = study()
  const { attachmentId, sha256, bytes } = addPicture(database, made, smallPictures.png)
  expect(sha256).toBe(createHash('sha256').update(smallPictures.png).digest('hex'))
  expect(bytes).toBe(smallPictures.png.length)
  expect(pictureContent(database, attachmentId, 0, 10_000)).toEqual({ bytes, content: smallPictures.png })
  expect(pictureContent(database, attachmentId, 8, 4).content).toEqual(smallPictures.png.slice(8, 12))
})

test('keeps the same picture of the same faces once, and of others under a record of its own', () => {
  const database = study()
  const first = addPicture(database, made, smallPictures.png)
  expect(addPicture(database, { ...made, name: 'again.png' }, smallPictures.png)).toEqual(first)
  const other = addPicture(database, { ...made, specimenId: 1, breakId: null }, smallPictures.png)
  expect(other.attachmentId).not.toBe(first.attachmentId)
  expect(pictures(database, ofBreak)).toHaveLength(1)
  expect(pictureContent(database, other.attachmentId, 0, 10_000).content).toEqual(smallPictures.png)
})

test('refuses a picture of what is not there, and keeps nothing of it', () => {
  const database = study()
  for (const owner of [
    { specimenId: null, breakId: 9 },
    { specimenId: 9, breakId: null },
  ])
    expect(() => addPicture(database, { ...made, ...owner }, smallPictures.png)).toThrow(
      expect.objectContaining({ code: 'not-found' }),
    )
  expect(database.prepare('SELECT count(*) FROM attachment_bytes').pluck().get()).toBe(0)
})

test('lists what was read from each picture, oldest first', () => {
  const database = study()
  addPicture(database, made, smallPictures.png)
  addPicture(database, { ...made, name: 'face b.jpg', mediaType: 'image/jpeg' }, smallPictures.jpeg)
  addWoodPicture(database, reading)
  addWoodPicture(database, { ...reading, decidedPercent: 45 })
  expect(
    pictures(database, ofBreak).map(({ attachment, readings }) => [
      attachment.name,
      readings.map(({ decidedPercent }) => decidedPercent),
    ]),
  ).toEqual([
    ['face a.png', [55, 45]],
    ['face b.jpg', []],
  ])
})

test('knows no reading of a picture that is not there', () => {
  expect(() => addWoodPicture(study(), reading)).toThrow(expect.objectContaining({ code: 'not-found' }))
})

test('tells of the break that a picture or a reading belongs to', () => {
  const database = study()
  takeTouched(database)
  addPicture(database, made, smallPictures.png)
  expect(takeTouched(database)).toEqual(['break 1'])
  addWoodPicture(database, reading)
  expect(takeTouched(database)).toEqual(['break 1'])
})
