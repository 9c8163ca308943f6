// Held by tests/exchange/sheets/readXlsx.spec.ts.
import sax from 'sax'
import { Trouble } from '#contract/errors.ts'

/** What is done of the elements of a part; names are given without their prefix. */
export type ElementHandlers = {
  open?(name: string, attributes: Readonly<Record<string, string>>): void
  close?(name: string): void
  text?(text: string): void
}

/**
 * Reads the elements of an XML text that comes in pieces. Throws Trouble `not-readable` for a text that is not well formed, and
 * for one that declares a document type: no sheet needs one, and its entities could grow without limit.
 */
export async function readElements(
  file: string,
  pieces: AsyncIterable<string>,
  handlers: ElementHandlers,
  signal?: AbortSignal,
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
  parser.onopentag = ({ name, attributes }) => handlers.open?.(localName(name), attributes as Record<string, string>)
  parser.onclosetag = (name) => handlers.close?.(localName(name))
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
