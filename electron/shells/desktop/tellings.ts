import type { TroubleMessage } from '#contract/errors.ts'
import { visibleText } from '#words/visibleText.ts'

/** What a box says: one sentence, and what it means or what to do. */
export type Telling = { message: string; detail: string }

/** What helps when the window itself is of no more use. */
export const startAgain = 'Close the window and start Breakledger again.'

/** The page stopped and was loaded again. */
export const pageCameBack = (reason: string): Telling => ({
  message: 'The page stopped and was loaded again.',
  detail: `Reason given: ${reason}. What was stored is as it was, and a running break goes on being recorded. What was typed and not saved is lost.`,
})

/** The page stopped again at once. */
export const pageGivenUp = (reason: string): Telling => ({
  message: 'The page stopped again and is not loaded a third time.',
  detail: `Reason given: ${reason}. A running break goes on being recorded. ${startAgain}`,
})

/** The page is to be closed while something typed is not saved. */
export const leaveUnsaved: Telling = {
  message: 'Leave without saving?',
  detail: 'Something was typed that is not saved yet.',
}

/** Something wanted to store a file. */
export const noDownload = (address: string): Telling => ({
  message: 'A download was refused.',
  detail: `It did not come from Breakledger: ${visibleText(address.slice(0, 200))}`,
})

/** A server's certificate does not hold. */
export const noCertificate = (address: string, error: string): Telling => ({
  message: 'A connection was refused because its certificate does not hold.',
  detail: `${visibleText(address.slice(0, 200))} (${error})`,
})

/** The demo cannot be shown; the program goes on without it. */
export const demoNotStarted = ({ message, hint }: TroubleMessage): Telling => ({
  message: visibleText(message),
  detail: visibleText(hint),
})

/** A second start names another archive. */
export const openOtherArchive = (path: string): Telling => ({
  message: `Open ${visibleText(path)}?`,
  detail:
    'Breakledger was started again with another archive. The one that is open is closed first; a running break is ended and kept.',
})
