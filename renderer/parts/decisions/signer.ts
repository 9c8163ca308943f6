// Held by tests/browser/breaks/signatures.spec.ts.
import { usePreferences, useStore } from '../../host/hostContext.ts'
import { createStore } from '../../host/store.ts'

const storedUnder = 'breakledger.signer'

/** The name said last; null: not looked yet. The storage of a session outlives a page loaded anew, and ends with the window. */
const saidLast = createStore<string | null>(null)

/** Who works here: the name that was said last in this session, else the one in the settings; '': nobody said. */
export function useSigner(): string {
  const { operator } = usePreferences()
  const said = useStore(saidLast) ?? sessionStorage.getItem(storedUnder) ?? ''
  return said === '' ? operator : said
}

/** Remembers a name for the rest of the session; after an empty one the name in the settings counts again. */
export function rememberSigner(name: string): void {
  sessionStorage.setItem(storedUnder, name.trim())
  saidLast.set(name.trim())
}
