import type { Archive } from '#archive/archive.ts'
import { Trouble } from '#contract/errors.ts'

type Writes = 'appendSamples' | 'finishBreak' | 'addRoutineReading' | 'addCheckWeight' | 'addCalibration'

/** An archive whose disk may be full: these writes are refused while it is. */
export function fullDisk(archive: Archive, writes: readonly Writes[]): { archive: Archive; fill(full: boolean): void } {
  let full = false
  const guarded = writes.map((name) => {
    const write = archive[name] as (...words: unknown[]) => Promise<unknown>
    const refusing = (...words: unknown[]) =>
      full ? Promise.reject(new Trouble('disk-full', 'The disk is full.', 'Free some space.')) : write(...words)
    return [name, refusing] as const
  })
  return {
    archive: { ...archive, ...Object.fromEntries(guarded) },
    fill(next) {
      full = next
    },
  }
}
