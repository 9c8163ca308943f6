import { expect, it } from 'vitest'
import { refuseDamaged } from '#renderer/parts/pictures/refuseDamaged.ts'
import { smallPictures } from '#tests/reference/faces/smallPictures.ts'

const { jpeg } = smallPictures
const decoding = (works: boolean) => {
  const types: string[] = []
  const decode = async ({ type }: Blob) => {
    types.push(type)
    if (!works) throw new DOMException('could not be decoded', 'InvalidStateError')
    return { close() {} }
  }
  return { types, decode }
}

it('lets a picture through that can be decoded', async () => {
  const { types, decode } = decoding(true)
  await refuseDamaged('face.jpg', Uint8Array.from(jpeg), decode)
  expect(types).toEqual(['image/jpeg'])
})

it('refuses one that cannot, by its name', async () => {
  await expect(refuseDamaged('face.jpg', Uint8Array.from(jpeg), decoding(false).decode)).rejects.toMatchObject({
    code: 'not-readable',
    message: expect.stringContaining('"face.jpg" is not kept: it is damaged'),
  })
})

it('decodes nothing that is no picture by its bytes, or has more pixels than can be shown', async () => {
  const { types, decode } = decoding(false)
  await refuseDamaged('drawing.png', new TextEncoder().encode('<svg/>') as Uint8Array<ArrayBuffer>, decode)
  const huge = Uint8Array.from(smallPictures.png)
  // ISO/IEC 15948: width and height at bytes 16 and 20, the highest byte first
  huge.set([0, 0, 0x80, 0, 0, 0, 0x80, 0], 16)
  await refuseDamaged('huge.png', huge, decode)
  expect(types).toEqual([])
})
