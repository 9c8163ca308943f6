/** What a person wrote, closed with a full stop where another sentence follows. */
export function endedSentence(written: string): string {
  return /[.!?…]$/.test(written.trim()) ? written.trim() : `${written.trim()}.`
}
