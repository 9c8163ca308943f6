import type { Archive } from '#archive/archive.ts'
import { openArchive } from '#archive/openArchive.ts'
import { closedBefore } from './questionThread.ts'

/** The archive read by a thread beside the one that stores: for questions that take so long that the samples of a capture would wait. */
export type ReadingArchive = {
  /** Asks about the archive as it is now. Rejects with the Trouble of opening or reading it; where it did not open, the next question tries again. */
  ask<Answer>(read: (archive: Archive) => Promise<Answer>): Promise<Answer>
  /** For good: whoever asks afterwards is told Trouble `cancelled`. */
  close(): Promise<void>
}

/** Starts no thread yet: the first question does, and it is kept for the next. */
export function readingArchive(archive: Pick<Archive, 'info'>, program: string): ReadingArchive {
  let opened: Promise<Archive> | null = null
  let closed = false
  async function open(): Promise<Archive> {
    try {
      const { path } = await archive.info()
      return await openArchive({ path, program, mode: 'read' })
    } catch (thrown) {
      opened = null
      throw thrown
    }
  }
  return {
    async ask(read) {
      if (closed) throw closedBefore()
      opened ??= open()
      const reader = await opened
      return read(reader)
    },
    async close() {
      closed = true
      // Where it did not open there is nothing to close, and whoever asked was told
      await opened?.then(
        (reader) => reader.close(),
        () => {},
      )
    },
  }
}
