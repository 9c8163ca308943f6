/** What the first bytes of a picture say of it. */
export type PictureHeader = {
  readonly mediaType: 'image/jpeg' | 'image/png' | 'image/webp'
  /** Pixels as they are stored; a camera that was held upright may ask for them to be turned. */
  readonly width: number
  readonly height: number
}

/** A picture of more pixels than this cannot be shown; it is four times what a large camera takes. */
export const mostPixels = 250_000_000

const textAt = (bytes: Uint8Array, at: number, text: string) =>
  bytes.length >= at + text.length && [...text].every((letter, i) => bytes[at + i] === letter.charCodeAt(0))
const whole = (bytes: Uint8Array, at: number, length: number, from: 'big' | 'little') => {
  let sum = 0
  for (let i = 0; i < length; i++) sum = sum * 256 + (bytes[from === 'big' ? at + i : at + length - 1 - i] ?? 0)
  return sum
}

/** ISO/IEC 15948: eight bytes of signature, then the chunk IHDR. */
function pngSize(bytes: Uint8Array): [number, number] | null {
  if (!textAt(bytes, 0, '\x89PNG\r\n\x1a\n') || !textAt(bytes, 12, 'IHDR')) return null
  return [whole(bytes, 16, 4, 'big'), whole(bytes, 20, 4, 'big')]
}

/** Start-of-frame markers of ITU-T T.81; 0xc4, 0xc8 and 0xcc mean other things. */
const isFrame = (marker: number) => marker >= 0xc0 && marker <= 0xcf && ![0xc4, 0xc8, 0xcc].includes(marker)

/** ITU-T T.81: segments of a marker and a length, up to the start of a frame. */
function jpegSize(bytes: Uint8Array): [number, number] | null {
  if (!textAt(bytes, 0, '\xff\xd8\xff')) return null
  let at = 2
  while (at + 9 < bytes.length && bytes[at] === 0xff) {
    const marker = bytes[at + 1]!
    // Markers may be preceded by any number of fill bytes.
    if (marker === 0xff) at += 1
    else if (isFrame(marker)) return [whole(bytes, at + 7, 2, 'big'), whole(bytes, at + 5, 2, 'big')]
    else at += 2 + whole(bytes, at + 2, 2, 'big')
  }
  return null
}

/** RFC 9649: a RIFF container whose first chunk is VP8, VP8L or VP8X. */
function webpSize(bytes: Uint8Array): [number, number] | null {
  if (!textAt(bytes, 0, 'RIFF') || !textAt(bytes, 8, 'WEBP')) return null
  if (textAt(bytes, 12, 'VP8X')) return [1 + whole(bytes, 24, 3, 'little'), 1 + whole(bytes, 27, 3, 'little')]
  if (textAt(bytes, 12, 'VP8L')) {
    const packed = whole(bytes, 21, 4, 'little')
    return [1 + (packed % 2 ** 14), 1 + (Math.floor(packed / 2 ** 14) % 2 ** 14)]
  }
  if (!textAt(bytes, 12, 'VP8 ')) return null
  return [whole(bytes, 26, 2, 'little') % 2 ** 14, whole(bytes, 28, 2, 'little') % 2 ** 14]
}

/**
 * What kind of picture bytes are and how many pixels it has, by what stands in them; null where they are no JPEG, PNG or WebP picture.
 *
 * Checked: tests/domain/strength/face/pictureHeader.spec.ts with pictures that OpenCV 5.0 wrote.
 */
export function pictureHeader(bytes: Uint8Array): PictureHeader | null {
  for (const [mediaType, sizeOf] of [
    ['image/png', pngSize],
    ['image/jpeg', jpegSize],
    ['image/webp', webpSize],
  ] as const) {
    const size = sizeOf(bytes)
    if (size !== null && size[0] > 0 && size[1] > 0) return { mediaType, width: size[0], height: size[1] }
  }
  return null
}
