// Held by tests/exchange/sheets/readXlsx.spec.ts.
import sax from 'sax'
import { Trouble } from '#contract/errors.ts'

/** What is done of the elements of a part; names are given without their prefix. */
export type ElementHandlers = {
  open?(name: string, attributes: Readonly<Record<string, string>>): void
  close?(name: string): void
  text?(text: string): void
}

/** No sheet program nests so deep, or says so much of one element: a few packed bytes unpack to millions of either. */
const mostNested = 200
const mostAttributes = 1000
/** Of parts whose elements are all kept: more than any list of sheets or styles holds. */
const mostKept = 1_000_000

/**
 * Reads the elements of an XML text that comes in pieces. Throws Trouble `not-readable` for a text that is not well formed, for
 * one that declares a document type (no sheet needs one, and its entities could grow without limit), and for names, values and
 * elements beyond what any sheet program writes. `mostElements` is for parts of which the handlers do not keep every element.
 */
export async function readElements(
  file: string,
  pieces: AsyncIterable<string>,
  handlers: ElementHandlers,
  { signal, mostElements = mostKept }: { signal?: AbortSignal | undefined; mostElements?: number } = {},
): Promise<void> {
  // The types of the package do not know the last one
  const options = { xmlns: false, position: false, strictEntities: true }
  const parser = sax.parser(true, options)
  const damaged = (what: string) =>
    new Trouble(
      'not-readable',
      `${file}: a part of the file is damaged (${what}).`,
      'Open the file in a sheet program, and save it again.',
    )
  let [elements, nested, attributes] = [0, 0, 0]
  parser.onattribute = () => {
    if (++attributes > mostAttributes) throw damaged(`an element has more than ${mostAttributes} attributes`)
  }
  parser.onopentag = (tag) => {
    attributes = 0
    if (++elements > mostElements) throw damaged('it holds more than any sheet program writes')
    if (++nested > mostNested) throw damaged(`more than ${mostNested} elements lie within each other`)
    handlers.open?.(localName(tag.name), tag.attributes as Record<string, string>)
  }
  parser.onclosetag = (name) => {
    nested--
    handlers.close?.(localName(name))
  }
  if (handlers.text !== undefined) {
    parser.ontext = handlers.text
    parser.oncdata = handlers.text
  }
  parser.ondoctype = () => {
    throw damaged('it declares a document type')
  }
  parser.onerror = (error) => {
    throw damaged(error.message.split('\n')[0]!)
  }
  for await (const piece of pieces) {
    signal?.throwIfAborted()
    // The parser bounds the length of names and values by its position, which it does not keep itself: lines are nobody's business
    parser.position = (parser.position ?? 0) + piece.length
    parser.write(piece)
  }
  parser.close()
}

function localName(name: string): string {
  const colon = name.indexOf(':')
  return colon < 0 ? name : name.slice(colon + 1)
}

/** The value of an attribute, whatever prefix it has. */
export function attributeOf(attributes: Readonly<Record<string, string>>, name: string): string | undefined {
  if (attributes[name] !== undefined) return attributes[name]
  const found = Object.keys(attributes).find((key) => localName(key) === name)
  return found === undefined ? undefined : attributes[found]
}
