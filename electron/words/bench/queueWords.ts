import { countOf } from '../units/counts.ts'

/** What the switch is called that puts the next waiting specimen on the bench after a break. */
export const handsFreeName = 'Next specimen automatically'

/** That no specimen is left to be broken after the one on the bench. */
export const noneWaitingWords = 'No other specimen is waiting'

/** How many specimens wait to be broken: "11 specimens waiting". */
export function waitingCountWords(waiting: number): string {
  return `${countOf(waiting, 'specimen')} waiting`
}

/** That nothing comes after the specimen on the bench in a breaking session, of which so many are still to be broken. */
export function lastOfSessionWords(waiting: number): string {
  return waiting === 0 ? 'All of the session are broken or passed over' : 'The last of the session'
}
