/** Wood failure as it is typed: digits join while they come quickly, arrows step by 5 %. */
export type WoodFailureEntry = { percent: number | null; digits: string; lastKeyMs: number }

export const emptyEntry: WoodFailureEntry = { percent: null, digits: '', lastKeyMs: Number.NEGATIVE_INFINITY }

/** Digits further apart than this begin a new number, ms. */
const joinWithinMs = 1500

/**
 * The entry after a key, or null when the key means nothing here. Digits are read as percent and taken to the nearest 5;
 * a number above 100 begins anew with its last digit. Arrow keys step by 5, Backspace and Delete empty the entry.
 */
export function enterKey(entry: WoodFailureEntry, key: string, nowMs: number): WoodFailureEntry | null {
  if (/^\d$/.test(key)) {
    const joined = nowMs - entry.lastKeyMs <= joinWithinMs ? entry.digits + key : key
    const digits = Number(joined) > 100 || joined.length > 3 ? key : joined
    return { percent: Math.round(Number(digits) / 5) * 5, digits, lastKeyMs: nowMs }
  }
  const step = { ArrowUp: 5, ArrowRight: 5, ArrowDown: -5, ArrowLeft: -5 }[key]
  if (step !== undefined) {
    const percent = entry.percent === null ? (step > 0 ? 5 : 0) : Math.min(Math.max(entry.percent + step, 0), 100)
    return { percent, digits: '', lastKeyMs: Number.NEGATIVE_INFINITY }
  }
  if (key === 'Backspace' || key === 'Delete') return emptyEntry
  return null
}
