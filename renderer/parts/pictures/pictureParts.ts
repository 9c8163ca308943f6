// Held by tests/engine/specimens/pictureHandlers.spec.ts.
import type { Client } from '#contract/wire/carrier.ts'

/** The bytes of a kept picture in parts, each asked for when the one before has come: the page goes on between them. */
export async function pictureParts(
  { call }: Pick<Client, 'call'>,
  attachmentId: number,
): Promise<Uint8Array<ArrayBuffer>[]> {
  const parts: Uint8Array<ArrayBuffer>[] = []
  let from = 0
  for (;;) {
    const { bytes, content } = await call('pictures.content', { attachmentId, from })
    parts.push(content as Uint8Array<ArrayBuffer>)
    from += content.length
    if (from >= bytes || content.length === 0) return parts
  }
}
