import { expect, test } from 'vitest'
import { addPicture } from '#archive/specimens/pictures.ts'
import { verify } from '#archive/verify/verify.ts'
import { smallPictures } from '#tests/reference/faces/smallPictures.ts'
import { behindTheTriggers } from '../behindTheTriggers.ts'
import { archiveInMemory, morning, storeBreak } from '../storedStudy.ts'

function study() {
  const database = archiveInMemory()
  storeBreak(database, null)
  const made = { specimenId: null, breakId: 1, recordedAt: morning, by: 'bench', name: 'face' }
  addPicture(database, { ...made, mediaType: 'image/png' }, smallPictures.png)
  addPicture(database, { ...made, mediaType: 'image/jpeg' }, smallPictures.jpeg)
  return database
}

test('finds pictures sound whose bytes are as they came', () => {
  expect(verify(study(), () => {}).faults).toEqual([])
})

test.each([
  [
    'a changed byte',
    `UPDATE attachment_bytes SET content = CAST(substr(content, 1, 60) || x'00' || substr(content, 62) AS BLOB)
     WHERE sha256 = (SELECT sha256 FROM attachment WHERE attachment_id = 2)`,
    [{ where: 'picture 2', what: 'its bytes are not those that were stored' }],
  ],
  [
    'lost bytes',
    'DELETE FROM attachment_bytes WHERE sha256 = (SELECT sha256 FROM attachment WHERE attachment_id = 1)',
    [{ where: 'picture 1', what: 'its bytes are gone' }],
  ],
])('names the picture with %s', (_what, text, faults) => {
  const database = study()
  behindTheTriggers(database, text)
  expect(verify(database, () => {}).faults).toEqual(faults)
})
