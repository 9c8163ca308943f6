import { Trouble } from '#contract/errors.ts'

/** What is said of a number that no record of that kind has. */
export function notFound(kind: string, id: number): Trouble {
  return new Trouble(
    'not-found',
    `There is no ${kind} ${id} in this archive.`,
    'Load the list again and choose from it.',
  )
}

/** What is said of something that does not fit what is stored already. */
export function conflict(message: string, hint: string): Trouble {
  return new Trouble('conflict', message, hint)
}

/** What is said of long work that was stopped and can be done another time. */
export function stopped(message: string): Trouble {
  return new Trouble('cancelled', message, 'Start it again when there is time.')
}
