import { runningOf } from '#domain/programme/labels/label.ts'

/** A scanner types a digit in so many ms at most; nobody types so fast for long. */
const scannerMs = 40
/** More digits than any number of ours has. */
const longestScan = 20

/** Waits, as the window's timers do; the returned function ends the wait. */
type Later = (act: () => void, ms: number) => () => void

/** What reading scans needs of the window. */
export type ScanParts = {
  later: Later
  onScan(text: string): void
  /** Gives a key that was held back to whoever acts on single keys. */
  replay(key: string): void
}

/**
 * Tells a scanner, which types a number at once and ends with Enter, from a person at the keys: a digit is held back for a
 * moment, and given on if no other follows in it. A number with letters is scanned into the field: keys of letters lead to places. `hear` returns true for a key that nobody else is to hear now.
 */
export function createScanReader({ later, onScan, replay }: ScanParts): { hear(key: string): boolean } {
  let held = ''
  let stopWaiting = () => {}

  function giveOn(): void {
    const keys = held
    held = ''
    for (const key of keys) replay(key)
  }

  return {
    hear(key) {
      stopWaiting()
      if (key === 'Enter' && isScan(held)) {
        const text = held
        held = ''
        onScan(text)
        return true
      }
      if (!/^\d$/.test(key) || held.length >= longestScan) {
        giveOn()
        return false
      }
      held += key
      stopWaiting = later(giveOn, scannerMs)
      return true
    },
  }
}

/** Whether text that came at once is a number: three digits are one only with their check digit, as wood failure is typed so too. */
function isScan(text: string): boolean {
  return text.length >= 4 || (text.length === 3 && runningOf(text) !== null)
}
