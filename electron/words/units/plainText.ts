const plain: Record<string, string> = {
  '\u00a0': ' ',
  '\u2009': '',
  '−': '-',
  '–': '-',
  '×': 'x',
  '±': '+-',
}

/** Words in the characters that every terminal has and every search finds: no thin spaces, no true minus signs. */
export function plainText(words: string): string {
  return words.replace(/[\u00a0\u2009−–×±]/g, (character) => plain[character] ?? character)
}
