import type { KnownArchive } from '#contract/keeping/archive.ts'
import { simulatedMark } from './demoWords.ts'

/** What an archive is called: the demo by that name, any other by its file without the ending. */
export function archiveName(path: string, isDemo: boolean): string {
  if (isDemo) return 'Demo'
  return (
    path
      .split(/[\\/]/)
      .at(-1)!
      .replace(/\.breakledger$/i, '') || path
  )
}

/** How an archive stands that can be opened. */
export function knownArchiveWords({ kind, isOpen, isThere, isUsual }: Omit<KnownArchive, 'path' | 'openedAt'>): string {
  const words = [
    kind === 'demo' ? simulatedMark : null,
    isOpen ? 'open now' : null,
    isThere ? null : isUsual ? 'new: made when it is opened' : 'the file is gone',
  ]
  return words.filter((word) => word !== null).join(', ')
}
