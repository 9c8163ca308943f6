import type { Carrier } from '#contract/wire/carrier.ts'

declare global {
  interface Window {
    /** Put there by the desktop shell's preload; absent in a browser. */
    readonly breakledger?: Carrier
  }
}

/** The desktop shell's carrier, or null in a browser. */
export function desktopCarrier(): Carrier | null {
  return window.breakledger ?? null
}
