import { Trouble } from '#contract/errors.ts'

/** What is said of a break whose capture still runs; `hint`: what to do, where waiting alone is not it. */
export function stillCaptured(breakId: number, hint = 'Wait until it has ended.'): Trouble {
  return new Trouble('conflict', `Break ${breakId} is still being recorded.`, hint)
}

/** What is said of a finished break that the program ended on before its result was stored. */
export function noResultYet(breakId: number): Trouble {
  return new Trouble('conflict', `Break ${breakId} has no result yet.`, 'Start the program again: it makes one then.')
}
