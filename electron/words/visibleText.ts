/**
 * Text with everything that cannot be seen, or that would steer a terminal, written as its number: "C1<U+200B>". Line ends
 * and tabs stay. Unicode general categories Cc, Cf, Zl and Zp, and halves of surrogate pairs.
 */
export function visibleText(text: string): string {
  return text.replace(hidden, (character) => `<U+${hexOf(character.codePointAt(0)!)}>`)
}

/** JSON with the same characters as escapes: it says the same, and no terminal is steered by it. */
export function visibleJson(json: string): string {
  return json.replace(hidden, (character) =>
    Array.from({ length: character.length }, (_, i) => `\\u${hexOf(character.charCodeAt(i)).toLowerCase()}`).join(''),
  )
}

const hidden = /(?![\n\t]|\r\n)[\p{Cc}\p{Cf}\p{Cs}\u2028\u2029]/gu

const hexOf = (number: number) => number.toString(16).toUpperCase().padStart(4, '0')
