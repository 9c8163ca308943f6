import { Trouble } from '#contract/errors.ts'
import { mostPixels, pictureHeader } from '#domain/strength/face/pictureHeader.ts'

/**
 * Rejects with the trouble "not-readable" for a picture that cannot be shown, before it is kept for good. What is no picture by its
 * bytes, or has too many pixels, is left to the program, which says so.
 */
export async function refuseDamaged(
  name: string,
  content: Uint8Array<ArrayBuffer>,
  decode: (picture: Blob) => Promise<{ close(): void }> = (picture) => createImageBitmap(picture),
): Promise<void> {
  const header = pictureHeader(content)
  if (header === null || header.width * header.height > mostPixels) return
  try {
    const bitmap = await decode(new Blob([content], { type: header.mediaType }))
    bitmap.close()
  } catch {
    throw new Trouble(
      'not-readable',
      `"${name}" is not kept: it is damaged, or of a form that no browser reads.`,
      'Copy it anew from where it came, or save it again as a JPEG picture.',
    )
  }
}
