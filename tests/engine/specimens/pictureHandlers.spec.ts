import { afterEach, beforeEach, expect, test } from 'vitest'
import { pictureBytesAtOnce } from '#contract/specimens/pictureProcedures.ts'
import { pictureParts } from '#renderer/parts/pictures/pictureParts.ts'
import { benchEngine } from '#tests/fakes/benchEngine.ts'
import { addBlocks, temporaryArchive } from '#tests/fakes/temporaryArchive.ts'
import { smallPictures } from '#tests/reference/faces/smallPictures.ts'

let home: Awaited<ReturnType<typeof temporaryArchive>>
let made: Awaited<ReturnType<typeof benchEngine>>
let owner: { specimenId: number; breakId: null }
beforeEach(async () => {
  home = await temporaryArchive()
  made = await benchEngine(home.archive)
  const [specimenId] = await addBlocks(home.archive, ['A-1'])
  owner = { specimenId: specimenId!, breakId: null }
})
afterEach(async () => {
  await made.engine.close()
  await home.remove()
})

const attach = (name: string, content: Uint8Array, of: object = owner) =>
  made.handlers['pictures.attach']({ ...owner, ...of, name, content: new Uint8Array(content), by: 'bench' })

test('judges what a picture is by its bytes, whatever it is called', async () => {
  const attachment = await attach('face.png', smallPictures.jpeg)
  expect(attachment).toMatchObject({ mediaType: 'image/jpeg', name: 'face.png' })
  expect(await made.handlers['pictures.list'](owner)).toEqual([{ attachment, readings: [] }])
})

test('gives a large picture in parts that are its bytes one after the other', async () => {
  const large = new Uint8Array(2 * pictureBytesAtOnce + 10).map((_, index) => index % 251)
  large.set(smallPictures.png)
  const { attachmentId } = await attach('large.png', large)
  const asked: number[] = []
  const parts = await pictureParts(
    {
      call: async (_name, input) => {
        const { from } = input as { from: number }
        asked.push(from)
        return made.handlers['pictures.content']({ attachmentId, from }) as never
      },
    },
    attachmentId,
  )
  expect(asked).toEqual([0, pictureBytesAtOnce, 2 * pictureBytesAtOnce])
  expect(Buffer.compare(Buffer.concat(parts), large)).toBe(0)
})

test.each([
  ['a text', new TextEncoder().encode('not a picture'), /neither JPEG nor PNG nor WebP/],
  ['more than 30 MB', new Uint8Array(30_000_001), /30\.0 MB/],
  ['too many pixels', smallPictures.png.with(17, 1).with(21, 1), /65543 x 65541 pixels/],
])('refuses %s with a sentence and keeps nothing', async (_what, content, message) => {
  await expect(attach('x.png', content)).rejects.toMatchObject({
    code: 'invalid-input',
    message: expect.stringMatching(message),
  })
  expect(await made.handlers['pictures.list'](owner)).toEqual([])
})

test('refuses a picture of nothing, and one of two things', async () => {
  for (const of of [{ specimenId: null }, { breakId: 1 }])
    await expect(attach('x.png', smallPictures.png, of)).rejects.toMatchObject({ code: 'invalid-input' })
})

test('keeps what was read from a picture with both numbers', async () => {
  const { attachmentId } = await attach('face.png', smallPictures.png)
  const corner = { x: 0.1, y: 0.1 }
  const reading = {
    attachmentId,
    corners: [corner, { x: 0.9, y: 0.1 }, { x: 0.9, y: 0.9 }, { x: 0.1, y: 0.9 }],
    threshold: 50,
    method: 'test 1',
    maskWidth: 4,
    maskHeight: 2,
    mask: 'f0',
    proposedPercent: 47.5,
    decidedPercent: 60,
    by: 'bench',
  }
  const { mask: _mask, ...kept } = reading
  expect(await made.handlers['pictures.decide'](reading)).toMatchObject(kept)
  expect((await made.handlers['pictures.list'](owner))[0]!.readings).toMatchObject([kept])
})
