import { describe, expect, it } from 'vitest'
import { checkCharacter } from '#domain/programme/labels/checkDigit.ts'

const sound = (text: string) => /^\d+$/.test(text) && checkCharacter(text.slice(0, -1)) === text.slice(-1)

describe('the check character', () => {
  it.each([
    // ISO/IEC 7064, the example of MOD 11-2
    ['0794', '0'],
    ['079', 'X'],
    // ORCID and ISNI, which use MOD 11-2, as published in their documentation: 0000-0002-1825-0097, 0000-0001-5109-3700,
    // 0000-0002-1694-233X, 0000 0001 2146 438X
    ['000000021825009', '7'],
    ['000000015109370', '0'],
    ['000000021694233', 'X'],
    ['000000012146438', 'X'],
  ])('of %s is %s', (digits, check) => {
    expect(checkCharacter(digits)).toBe(check)
  })

  it('finds every single wrong digit and every swap of two neighbours in all labels of up to five digits', () => {
    let tried = 0
    for (let running = 1; running < 10_000; running++) {
      const check = checkCharacter(String(running))
      if (check === 'X') continue
      for (const slip of slipsOf(`${running}${check}`)) {
        tried++
        if (sound(slip)) throw new Error(`${slip} passes for ${running}${check}`)
      }
    }
    // 9,090 labels, 44,430 digits with nine wrong ones each, and the neighbours that differ
    expect(tried).toBeGreaterThan(400_000)
  })

  it('refuses what is no run of digits', () => {
    for (const text of ['', '12a', '-1', '1 2']) expect(() => checkCharacter(text)).toThrow(RangeError)
  })
})

/** Every single wrong digit and every swap of two neighbours that differ. */
function slipsOf(label: string): string[] {
  return [...label].flatMap((digit, at) => {
    const [before, after] = [label.slice(0, at), label.slice(at + 1)]
    const wrong = [...'0123456789'].filter((other) => other !== digit).map((other) => before + other + after)
    return after === '' || after[0] === digit ? wrong : [...wrong, before + after[0] + digit + after.slice(1)]
  })
}
