import type { ByteSource } from '#acquisition/byteSource.ts'

const lineFeed = 10

/** A source that counts in `received` the lines with something in them: an empty one, with which the amplifier begins, carries no sample. */
export function countedLines(source: ByteSource, received: { lines: number }): ByteSource {
  let previous = lineFeed
  return {
    ...source,
    open: (listener) =>
      source.open({
        ...listener,
        bytes(chunk, arrivalS) {
          for (const byte of chunk) {
            if (byte === lineFeed && previous !== lineFeed) received.lines += 1
            previous = byte
          }
          listener.bytes(chunk, arrivalS)
        },
      }),
  }
}
