/** What is true of all that a demo archive holds. */
export const demoArchiveWords =
  'Demo archive: everything in it is simulated, and nothing of it enters your own archive.'

/** Why no pull of the demo is listed yet. */
export const demoFillingWords =
  'The demo is being filled: what its study did in the years before today is still being made. Its pulls are listed when that is done.'

/** How the kind of device is said that a calibration was made on. */
export function deviceWords(device: 'serial' | 'virtual'): string {
  return device === 'virtual' ? `virtual, ${simulatedMark}` : device
}

/** What there is to do when the virtual press has broken all that waited. */
export const demoOverWords =
  'Every block of the demo is broken. Open your own archive, or put a block in again from its page.'

/** How a record is marked whose numbers nobody measured. */
export const simulatedMark = 'simulated'

/** How much of an archive nobody measured. */
export function simulatedBreaksWords(simulated: number, breaks: number): string {
  if (simulated === breaks) return breaks === 1 ? 'The one break in it.' : `All ${breaks} breaks in it.`
  return `${simulated} of its ${breaks} breaks; each is marked wherever it stands.`
}

/** A warning beside a break's numbers. */
export function simulatedBreakWords(breakId: number): string {
  return `Break ${breakId} is simulated: every number of it is invented.`
}

/** Whether nobody measured what a record says: the demo study made it up, or the virtual amplifier sent it. */
export function isSimulated({ demo = false, simulated = false }: { demo?: boolean; simulated?: boolean }): boolean {
  return demo || simulated
}
