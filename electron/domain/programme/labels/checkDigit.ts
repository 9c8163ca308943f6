/**
 * Check character of a run of digits: '0' to '9', or 'X' for ten. It finds every single wrong digit, every swap of two digits
 * and nearly all other slips in what people write by hand.
 *
 *   Σ aᵢ 2^(i − 1) ≡ 1 (mod 11)     aᵢ the i-th character from the right, the check character being the first
 *
 * Throws RangeError for what is no run of digits.
 * Source: ISO/IEC 7064, pure system MOD 11-2. Checked: tests/domain/programme/labels/checkDigit.spec.ts against the example of
 * the standard and published identifiers, and by every single error and swap.
 */
export function checkCharacter(digits: string): string {
  if (!/^\d+$/.test(digits)) throw new RangeError(`checkCharacter requires digits, and "${digits}" is not`)
  let remainder = 0
  for (const digit of digits) remainder = ((remainder + Number(digit)) * 2) % 11
  const check = (12 - remainder) % 11
  return check === 10 ? 'X' : String(check)
}
