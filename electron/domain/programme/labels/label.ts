import { checkCharacter } from './checkDigit.ts'

/** The largest running number: seven digits and their check digit still fit a small label. */
export const lastRunning = 9_999_999

/**
 * What a running number looks like on a block: its digits and their check digit; null where that would be no digit, for such
 * numbers are skipped. Throws RangeError outside 1 to `lastRunning`.
 */
export function labelOf(running: number): string | null {
  if (!Number.isInteger(running) || running < 1 || running > lastRunning)
    throw new RangeError(`labelOf requires a running number from 1 to ${lastRunning}, not ${running}`)
  const check = checkCharacter(String(running))
  return check === 'X' ? null : `${running}${check}`
}

/** The running number of a label; null for what is no label: not digits alone, a leading zero, a wrong check digit. */
export function runningOf(label: string): number | null {
  if (!/^[1-9]\d{1,7}$/.test(label)) return null
  return checkCharacter(label.slice(0, -1)) === label.slice(-1) ? Number(label.slice(0, -1)) : null
}

/** The first running number after another (0: the first of all) that makes a label. Throws RangeError when there is none left. */
export function nextRunning(after: number): number {
  for (let running = after + 1; running <= lastRunning; running++) if (labelOf(running) !== null) return running
  throw new RangeError(`nextRunning found no number after ${after}`)
}
