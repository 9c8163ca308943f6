/** The number that follows in a batch: the last digits and one more, with their leading zeros. '': it ends in no digit. */
export function nextNumber(number: string): string {
  const counted = /^(.*?)(\d+)$/.exec(number.trim())
  if (counted === null) return ''
  const [, name, digits] = counted as unknown as [string, string, string]
  return `${name}${String(BigInt(digits) + 1n).padStart(digits.length, '0')}`
}
