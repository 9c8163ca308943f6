import { expect, it } from 'vitest'
import { pictureHeader } from '#domain/strength/face/pictureHeader.ts'
import { smallPictures } from '#tests/reference/faces/smallPictures.ts'

it.each([
  ['png', 'image/png'],
  ['jpeg', 'image/jpeg'],
  ['webp', 'image/webp'],
  ['losslessWebp', 'image/webp'],
] as const)('reads kind and pixels of a picture from its bytes: %s', (kind, mediaType) => {
  expect(pictureHeader(smallPictures[kind])).toEqual({ mediaType, width: 7, height: 5 })
})

it('reads the size of a WebP picture with an extended header', () => {
  // RFC 9649, 2.7: width and height less one as 24 bits each, behind the flags.
  const extended = new Uint8Array(30)
  extended.set(new TextEncoder().encode('RIFF....WEBPVP8X'))
  extended.set([0x83, 0x23, 0x00, 0x57, 0x1b, 0x00], 24)
  expect(pictureHeader(extended)).toEqual({ mediaType: 'image/webp', width: 9092, height: 7000 })
})

it('passes over what stands before the size of a JPEG picture, fill bytes too', () => {
  const { jpeg } = smallPictures
  const note = [0xff, 0xff, 0xfe, 0x00, 0x04, 0x41, 0x42]
  expect(pictureHeader(Uint8Array.from([...jpeg.slice(0, 2), ...note, ...jpeg.slice(2)]))).toMatchObject({ width: 7 })
})

it.each([
  ['nothing', new Uint8Array()],
  ['a text', new TextEncoder().encode('load;wood failure\n4120;75\n')],
  ['a picture that is cut off before its size', smallPictures.jpeg.slice(0, 100)],
  ['the first bytes of a picture', smallPictures.png.slice(0, 9)],
  ['another file in the container of WebP', new TextEncoder().encode('RIFF....WAVEfmt 0123456789012345')],
  ['a picture without pixels', smallPictures.png.with(19, 0)],
])('knows %s for no picture', (_what, bytes) => {
  expect(pictureHeader(bytes)).toBeNull()
})
