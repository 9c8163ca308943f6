/** Text as it is compared: composed, without accents, lower case. */
export function folded(text: string): string {
  return text
    .normalize('NFD')
    .replace(/\p{Mn}/gu, '')
    .normalize('NFC')
    .toLowerCase()
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

/** The words of a search, each of which must occur. */
export function searchWords(text: string): string[] {
  return folded(text)
    .split(/\s+/u)
    .filter((word) => word !== '')
}
