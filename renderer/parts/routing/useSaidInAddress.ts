// Held by tests/browser/longList.spec.ts.
import { useEffect } from 'react'

/** Keeps in the address, behind its page, how the page is looked at ("?text=epoxy", or ''), so that loading it again and Back find that. */
export function useSaidInAddress(said: string): void {
  useEffect(() => {
    const hash = `${location.hash.replace(/\?.*$/, '')}${said}`
    if (hash !== location.hash) history.replaceState(history.state, '', hash)
  }, [said])
}
