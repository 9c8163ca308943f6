import type { VerifyReport } from '#contract/keeping/archive.ts'
import type { AllocationDone } from '#contract/programme/studyRecord.ts'
import type { Signature } from '#contract/signature.ts'
import type { JudgedBlock } from '#contract/specimens/importedResult.ts'
import type { Withdrawal } from '#contract/specimens/withdrawal.ts'
import type { Progress } from '#contract/tasks.ts'
import type { Topic } from '#contract/topics.ts'
import type { Database } from './core/database.ts'
import type { NewReadings } from './findings/climate/storeReadings.ts'
import type { Methods } from './methods.ts'
import type { NewImport } from './specimens/import/storeImport.ts'

/** A function of the archive as a client in another thread calls it: without the connection, and with a promise. */
type Asked<Method> = Method extends (database: Database, ...args: infer Arguments) => infer Result
  ? (...args: Arguments) => Promise<Result>
  : never

/**
 * The archive as its users see it: every function of methods.ts by its name, and what concerns the opening as a whole. Each
 * call that writes is one transaction and durable when it resolves; each rejects with a Trouble that says what to do.
 */
export type Archive = { readonly [Name in keyof Methods]: Asked<Methods[Name]> } & {
  /** Looks at everything, in a thread of its own, so that a running capture is never kept waiting. */
  verify(onProgress: (progress: Progress) => void, signal: AbortSignal): Promise<VerifyReport>
  /** Makes all lists again from the records, all or nothing. No sample of a running capture can be stored meanwhile. */
  rebuildDerived(onProgress: (progress: Progress) => void, signal: AbortSignal): Promise<void>
  /** Allocates the blocks of a study, all or nothing. No sample of a running capture can be stored meanwhile. */
  allocateStudy(
    onProgress: (progress: Progress) => void,
    signal: AbortSignal,
    studyId: number,
    recordedAt: string,
    by: string,
  ): Promise<AllocationDone>
  /** Brings the new blocks of a table in, all or nothing. No sample of a running capture can be stored meanwhile. */
  storeImport(onProgress: (progress: Progress) => void, signal: AbortSignal, made: NewImport): Promise<JudgedBlock[]>
  /** Puts specimens on another place of the shelf, all or nothing. No sample of a running capture can be stored meanwhile. */
  moveSpecimens(
    onProgress: (progress: Progress) => void,
    signal: AbortSignal,
    specimenIds: readonly number[],
    place: string,
    recordedAt: string,
    signature: Signature,
  ): Promise<number>
  /** Withdraws specimens or takes them back, all or nothing. No sample of a running capture can be stored meanwhile. */
  withdrawSpecimens(
    onProgress: (progress: Progress) => void,
    signal: AbortSignal,
    specimenIds: readonly number[],
    kind: Withdrawal['kind'],
    recordedAt: string,
    signature: Signature,
  ): Promise<number>
  /** Keeps the new readings of a logger's file, all or none. No sample of a running capture can be stored meanwhile. */
  storeReadings(
    onProgress: (progress: Progress) => void,
    signal: AbortSignal,
    made: NewReadings,
  ): Promise<Uint8Array<ArrayBuffer>>
  /**
   * Tells once for each call that wrote, after its commit and before its promise resolves, what it touched: each topic once.
   * A call that touches nothing that is read (samples of a running capture, rejected lines) is not told. The function
   * returned ends it.
   */
  onChange(listener: (topics: readonly Topic[]) => void): () => void
  close(): Promise<void>
}
