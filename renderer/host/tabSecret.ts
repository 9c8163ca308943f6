// Held by tests/browser/whoComesIn.spec.ts.
const storedUnder = 'breakledger-tab'

/**
 * The secret that lets this tab in, or null. The page that the printed address opened carries it; it is kept in the tab's own
 * storage, which no other port of this computer can read, so that the tab can be loaded anew. The address, whose ticket is
 * used up, is taken out of the history.
 */
export function takeTabSecret(): string | null {
  const given = document.querySelector<HTMLMetaElement>(`meta[name="${storedUnder}"]`)
  if (given !== null) {
    sessionStorage.setItem(storedUnder, given.content)
    given.remove()
  }
  if (location.search !== '') history.replaceState(history.state, '', location.pathname + location.hash)
  return sessionStorage.getItem(storedUnder)
}
