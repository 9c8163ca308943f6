// Held by tests/browser/findings/findingsPage.spec.ts.
const family = 'Roboto'

/** `@font-face` rules, with the typefaces within them, of the page's own that hold characters of a text. */
export async function typefaceRules(text: string): Promise<string> {
  const points = new Set(Array.from(text, (character) => character.codePointAt(0)!))
  const wanted = rulesOfPage().filter(({ style }) => {
    const ranges = rangesOf(style.getPropertyValue('unicode-range'))
    return [...points].some((point) => ranges.some(([from, to]) => point >= from && point <= to))
  })
  const rules = await Promise.all(wanted.map(ruleWithin))
  return rules.join('')
}

function rulesOfPage(): CSSFontFaceRule[] {
  return [...document.styleSheets].flatMap((sheet) =>
    [...sheet.cssRules].filter(
      (rule): rule is CSSFontFaceRule =>
        rule instanceof CSSFontFaceRule && rule.style.getPropertyValue('font-family').includes(family),
    ),
  )
}

function rangesOf(written: string): [number, number][] {
  return Array.from(written.matchAll(/U\+([0-9a-f]+)(?:-([0-9a-f]+))?/gi), ([, from, to]) => [
    Number.parseInt(from!, 16),
    Number.parseInt(to ?? from!, 16),
  ])
}

async function ruleWithin({ style, parentStyleSheet }: CSSFontFaceRule): Promise<string> {
  const address = /url\("?([^")]+)"?\)/.exec(style.getPropertyValue('src'))?.[1] ?? ''
  const answer = await fetch(new URL(address, parentStyleSheet?.href ?? document.baseURI))
  const bytes = new Uint8Array(await answer.arrayBuffer())
  const data = btoa(Array.from(bytes, (byte) => String.fromCharCode(byte)).join(''))
  return (
    `@font-face{font-family:${family};font-weight:100 900;unicode-range:${style.getPropertyValue('unicode-range')};` +
    `src:url("data:font/woff2;base64,${data}") format("woff2")}`
  )
}
