import type { ByteSource } from '#acquisition/byteSource.ts'
import type { Clock } from '#acquisition/clock.ts'
import type { Archive } from '#archive/archive.ts'
import type { Outbox } from '../../core/outbox.ts'
import type { SourceFacts } from './sourceFacts.ts'

/** The record of one connection: which device, which line format, and the lines that were no readings. */
export type SessionRecord = {
  begin(source: ByteSource, facts: SourceFacts): void
  /** The number of the connection, once it is stored. */
  id(): number
  rejected(count: number, example: Uint8Array): void
}

/** Keeps connections in the archive, behind whatever waits to be written. */
export function createSessionRecord(parts: {
  archive: Pick<Archive, 'beginSession' | 'keepRejectedLines'>
  clock: Clock
  outbox: Pick<Outbox, 'put'>
  program: string
}): SessionRecord {
  const { archive, clock, outbox, program } = parts
  let sessionId = 0
  return {
    begin(source, { lineFormat }) {
      const session = {
        startedAt: clock.instant(),
        source: source.label,
        lineFormat: [lineFormat.name, ...lineFormat.columns].join(' '),
        program,
      }
      outbox.put(async () => {
        sessionId = (await archive.beginSession(session)).sessionId
      })
    },
    id: () => sessionId,
    rejected(count, example) {
      const recordedAt = clock.instant()
      outbox.put(() => archive.keepRejectedLines(sessionId, recordedAt, count, example))
    },
  }
}
