/** Text composed, without accents, lower case. */
export function caseFolded(text: string): string {
  return text
    .normalize('NFD')
    .replace(/\p{Mn}/gu, '')
    .normalize('NFC')
    .toLowerCase()
}

/**
 * Text as it is compared: two that look the same are the same. Compatibility forms (Unicode UAX 15, NFKC) such as full-width
 * digits become plain, every dash a hyphen, every blank one space; what takes no room, and control characters, are left out.
 */
export function folded(text: string): string {
  // All that the rules below say of plain ASCII, for lists of ten thousand rows
  if (/^[\x20-\x7e]*$/.test(text)) return text.toLowerCase().replace(/ {2,}/g, ' ').trim()
  const plain = text
    .normalize('NFKC')
    .replace(/[\p{Pd}\u2212]/gu, '-')
    .replace(/\s+/gu, ' ')
    .replace(/[\p{Cc}\p{Cf}\p{Default_Ignorable_Code_Point}]/gu, '')
  return caseFolded(plain).trim()
}

/**
 * A key whose plain byte order is the order in which people count: "C1-LL-2" before "C1-LL-10". Each run of digits loses its
 * leading zeros and gets its length in front, as three digits.
 */
export function naturalKey(text: string): string {
  return folded(text).replace(/[0-9]+/g, (digits) => {
    const significant = digits.replace(/^0+(?=.)/, '')
    return String(significant.length).padStart(3, '0') + significant
  })
}

/** Names of figures that a row shows: a number behind one is that figure and no part of another. */
const figureNames: readonly string[] = ['gap', 'overlap', 'area', 'peak', 'strength', 'failure', 'age']

/**
 * What must occur for a search to find a row, each of it: its words, and a number behind the name of a figure together with that
 * name, as "gap 0 ". The blank at its end keeps 0 from being found in 0.5; every row must therefore end with one.
 */
export function searchWords(text: string): string[] {
  const words = folded(text)
    .split(/\s+/u)
    .filter((word) => word !== '')
  return words.flatMap((word, index) => {
    const isFigure = (at: number) => figureNames.includes(words[at] ?? '') && /^\d+(\.\d+)?$/.test(words[at + 1] ?? '')
    if (isFigure(index)) return [`${word} ${words[index + 1]} `]
    return isFigure(index - 1) ? [] : [word]
  })
}
