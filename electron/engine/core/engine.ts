import type { ByteSource } from '#acquisition/byteSource.ts'
import type { Clock } from '#acquisition/clock.ts'
import type { Archive } from '#archive/archive.ts'
import type { Listening, SerialPortInfo } from '#contract/bench/bench.ts'
import type { SourceChoice } from '#contract/bench/source.ts'
import type { EventName, PayloadOf } from '#contract/events.ts'
import type { HeadFinding } from '#contract/keeping/archive.ts'
import type { Handlers, OutputOf } from '#contract/procedures.ts'

/** Prints an HTML text, which needs no other file, as PDF. Rejects with a Trouble when it cannot. */
export type PrintPdf = (html: string) => Promise<Uint8Array<ArrayBuffer>>

/** The parts an engine is made of. A test hands in a recorded source, a temporary archive and a clock it moves. */
export type EngineParts = {
  archive: Archive
  clock: Clock
  openSource(choice: SourceChoice, clock: Clock): ByteSource
  listPorts(): Promise<SerialPortInfo[]>
  listen(path: string, baudRate: number, seconds: number): Promise<Listening>
  host: Pick<OutputOf<'app.info'>, 'host' | 'capabilities'>
  program: string
  /** Prints an HTML text as PDF, on paper of the size that it names; absent: the host cannot. */
  printPdf?: PrintPdf
  /** What is wrong with the archive's chain, held against the head that was kept of it; none is kept: nothing. */
  chainFinding?: HeadFinding | null
}

/** The use cases, behind one contract. A shell adds a carrier and nothing else. */
export type Engine = {
  handlers: Handlers
  /** Hears every event of that name until the returned function is called. */
  subscribe<N extends EventName>(name: N, listener: (payload: PayloadOf<N>) => void): () => void
  /** Ends a running capture as interrupted, closes the source and waits until all is on disk. The archive stays open. */
  close(): Promise<void>
}
