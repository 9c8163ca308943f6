import type { ChainHead } from '#contract/keeping/archive.ts'

/** A head of the chain as it is written down and as the command verify takes it: how many entries there are, and the hash of the newest. */
export function headText({ count, hash }: Pick<ChainHead, 'count' | 'hash'>): string {
  return `${count}:${hash}`
}

/** What the head is good for, above it. */
export const headUse =
  'Every record adds to the chain of checksums; this is its end now. Note it in your lab book after a session: whoever gives it to the command breakledger verify --head later sees whether the archive still holds all that it holds now.'
