/** The words with a capital at their beginning. */
export function capitalised(words: string): string {
  return `${words.charAt(0).toUpperCase()}${words.slice(1)}`
}

/** What a person wrote, closed with a full stop where another sentence follows. */
export function endedSentence(written: string): string {
  return /[.!?…]$/.test(written.trim()) ? written.trim() : `${written.trim()}.`
}

/** Words as one sentence: with a capital and a full stop. */
export function asSentence(words: string): string {
  return endedSentence(capitalised(words))
}
