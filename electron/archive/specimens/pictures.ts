import { createHash } from 'node:crypto'
import type { Attachment, WoodPicture } from '#contract/specimens/attachment.ts'
import type { KeptPicture, PictureOwner, WoodReading } from '#contract/specimens/pictureProcedures.ts'
import type { Database } from '../core/database.ts'
import { prepared } from '../core/prepared.ts'
import { storeRecord } from '../core/recordKind.ts'
import { readRecord, readRecords } from '../core/recordTable.ts'
import { notFound } from '../core/recordTrouble.ts'
import { touch } from '../core/touched.ts'
import { inTransaction } from '../core/transaction.ts'
import { attachmentKind, woodPictureKind } from './pictureKinds.ts'

const sha256Of = (content: Uint8Array) => createHash('sha256').update(content).digest('hex')

/** Throws the trouble "not-found" where what a picture shows is not there. */
function needOwner(database: Database, { specimenId, breakId }: PictureOwner): void {
  const has = (text: string, id: number) => prepared(database, text).get(id) !== undefined
  if (specimenId !== null && !has('SELECT 1 FROM specimen_current WHERE specimen_id = ?', specimenId))
    throw notFound('specimen', specimenId)
  if (breakId !== null && !has('SELECT 1 FROM break_header WHERE break_id = ?', breakId))
    throw notFound('break', breakId)
}

function picturesOf(database: Database, { specimenId, breakId }: PictureOwner): Attachment[] {
  return readRecords(
    database,
    attachmentKind,
    'WHERE specimen_id IS ? AND break_id IS ? ORDER BY attachment_id',
    specimenId,
    breakId,
  )
}

/** Keeps a picture with its bytes as they came; one that its owner has already is answered as it stands. */
export function addPicture(
  database: Database,
  made: Omit<Attachment, 'attachmentId' | 'bytes' | 'sha256'>,
  content: Uint8Array,
): Attachment {
  return inTransaction(database, () => {
    needOwner(database, made)
    const sha256 = sha256Of(content)
    const there = picturesOf(database, made).find((one) => one.sha256 === sha256)
    if (there !== undefined) return there
    prepared(
      database,
      `INSERT INTO attachment_bytes (sha256, content) SELECT ?, ? WHERE NOT EXISTS (SELECT 1 FROM attachment_bytes WHERE sha256 = ?)`,
    ).run(sha256, content, sha256)
    return storeRecord(database, attachmentKind, { ...made, bytes: content.length, sha256 })
  })
}

const withoutMask = ({ mask: _mask, ...reading }: WoodPicture): WoodReading => reading

/** The pictures of a specimen or of a break, with what was read from each. */
export function pictures(database: Database, owner: PictureOwner): KeptPicture[] {
  return picturesOf(database, owner).map((attachment) => ({
    attachment,
    readings: readRecords(
      database,
      woodPictureKind,
      'WHERE attachment_id = ? ORDER BY wood_picture_id',
      attachment.attachmentId,
    ).map(withoutMask),
  }))
}

/** How many bytes a picture has, and some of them as they came. Throws the trouble "not-found" where there is none. */
export function pictureContent(
  database: Database,
  attachmentId: number,
  from: number,
  most: number,
): { bytes: number; content: Uint8Array<ArrayBuffer> } {
  const { sha256, bytes } = readRecord(database, attachmentKind, attachmentId)
  const row = prepared<{ content: Uint8Array }>(
    database,
    'SELECT substr(content, ?, ?) AS content FROM attachment_bytes WHERE sha256 = ?',
  ).get(from + 1, most, sha256)
  if (row === undefined) throw notFound('content of picture', attachmentId)
  return { bytes, content: new Uint8Array(row.content) }
}

/** Keeps what was read from a picture, beside what was read from it before. */
export function addWoodPicture(database: Database, made: Omit<WoodPicture, 'woodPictureId'>): WoodReading {
  return inTransaction(database, () => {
    const { specimenId, breakId } = readRecord(database, attachmentKind, made.attachmentId)
    const stored = storeRecord(database, woodPictureKind, made)
    if (specimenId !== null) touch(database, `specimen ${specimenId}`)
    if (breakId !== null) touch(database, `break ${breakId}`)
    return withoutMask(stored)
  })
}
