/** What is said where somebody must sign and has not. */
export const askForName = 'Enter your name or initials.'

/** In whose name entries are recorded; '': nobody has said. */
export function signedAsWords(signer: string): string {
  return signer === '' ? 'Recorded without a name.' : `Recorded as ${signer}.`
}
