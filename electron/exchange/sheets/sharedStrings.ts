// Held by tests/exchange/sheets/readXlsx.spec.ts.
import { Trouble } from '#contract/errors.ts'
import { readElements } from './xmlElements.ts'

/** More text than a million rows of honest notes hold, and more texts than a sheet may have values. */
const mostCharacters = 256_000_000
const mostTexts = 10_000_000

/** Counts the characters of all texts that are kept; throws Trouble `not-readable` where they are more than any sheet holds. */
export function textCounter(file: string): (characters: number) => void {
  let counted = 0
  return (characters) => {
    counted += characters
    if (counted > mostCharacters) throw tooMuchText(file)
  }
}

const tooMuchText = (file: string) =>
  new Trouble(
    'not-readable',
    `${file}: the file holds more text than can be read.`,
    'Copy the rows that are wanted into a new sheet.',
  )

/** The texts that cells name by number. Throws Trouble `not-readable` where there are more than any sheet holds. */
export async function readSharedStrings(
  file: string,
  pieces: AsyncIterable<string>,
  signal: AbortSignal | undefined,
): Promise<string[]> {
  const strings: string[] = []
  let text: string | null = null
  let inText = false
  let reading = 0
  const count = textCounter(file)
  await readElements(
    file,
    pieces,
    {
      open(name) {
        if (name === 'si') text = ''
        else if (name === 't') inText = reading === 0
        // How a word is pronounced is written beside it and is no part of it
        else if (name === 'rPh') reading++
      },
      close(name) {
        if (name === 'si' && strings.push(withEscapes(text ?? '')) > mostTexts) throw tooMuchText(file)
        if (name === 't') inText = false
        else if (name === 'rPh') reading--
      },
      text(piece) {
        if (!inText || text === null) return
        count(piece.length)
        text += piece
      },
    },
    { signal, mostElements: Number.POSITIVE_INFINITY },
  )
  return strings
}

/** A character that XML cannot hold is written as its number (ECMA-376 part 1, 22.9.2.19). */
export function withEscapes(text: string): string {
  return text.includes('_x')
    ? text.replace(/_x([0-9A-Fa-f]{4})_/g, (_, digits: string) => String.fromCharCode(Number.parseInt(digits, 16)))
    : text
}
