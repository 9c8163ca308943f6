/** What the format of a number says of it: whether it shows a day or a time, what is written behind it, and how many digits it is filled up to. */
export type NumberFormat = {
  readonly shows: 'number' | 'date' | 'time'
  readonly unit: string
  readonly digits: number
}

const plainFormat: NumberFormat = { shows: 'number', unit: '', digits: 0 }
const percentFormat: NumberFormat = { ...plainFormat, unit: '%' }

/**
 * The formats that a file names by number alone (ECMA-376 part 1, 18.8.30): 9 and 10 percent, 14 to 17 and 22 days, 18 to 21 and
 * 45 to 47 times, 27 to 36 and 50 to 58 days of East Asian languages.
 */
export function builtInFormat(id: number): NumberFormat {
  if (id === 9 || id === 10) return percentFormat
  if ((id >= 14 && id <= 17) || id === 22 || (id >= 27 && id <= 36) || (id >= 50 && id <= 58))
    return { ...plainFormat, shows: 'date' }
  if ((id >= 18 && id <= 21) || (id >= 45 && id <= 47)) return { ...plainFormat, shows: 'time' }
  return plainFormat
}

/** What a written format says (ECMA-376 part 1, 18.8.31); of several sections the first, which is that of positive numbers. */
export function readNumberFormat(code: string): NumberFormat {
  const { letters, literal } = firstSection(code)
  if (/general/i.test(letters)) return { ...plainFormat, unit: literal.trim() }
  if (/[yd]/i.test(letters)) return { ...plainFormat, shows: 'date' }
  if (/[hs]/i.test(letters)) return { ...plainFormat, shows: 'time' }
  if (/m/i.test(letters)) return { ...plainFormat, shows: 'date' }
  if (letters.includes('%')) return percentFormat
  return { shows: 'number', unit: literal.trim(), digits: /^0{2,}$/.test(letters.trim()) ? letters.trim().length : 0 }
}

/** What stands for digits, days and times, and apart from it the text that is written behind the number. */
function firstSection(code: string): { letters: string; literal: string } {
  let letters = ''
  let literal = ''
  // Text before the number, such as a sign of a currency, is no unit of a measured value
  const say = (text: string) => {
    if (/[0#?]|general/i.test(letters)) literal += text
  }
  for (let i = 0; i < code.length; i++) {
    const character = code[i]!
    if (character === ';') break
    if (character === '"') {
      const end = code.indexOf('"', i + 1)
      say(code.slice(i + 1, end < 0 ? code.length : end))
      i = end < 0 ? code.length : end
    } else if (character === '\\') say(code[++i] ?? '')
    else if (character === '_' || character === '*') i++
    else if (character === '[') {
      const end = code.indexOf(']', i)
      const inside = code.slice(i + 1, end < 0 ? code.length : end)
      if (/^(h+|m+|s+)$/i.test(inside)) letters += 's'
      else if (inside.startsWith('$')) say(inside.slice(1).split('-')[0]!)
      i = end < 0 ? code.length : end
    } else letters += character
  }
  return { letters, literal }
}
