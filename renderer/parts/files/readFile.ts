import { Trouble } from '#contract/errors.ts'

/** The contract takes no longer name; its end tells the kind of file. */
const longestName = 200

/** A file as it is handed to the program. */
export type ReadFile = { name: string; content: Uint8Array<ArrayBuffer> }

/** A file that was chosen, dropped or pasted, with all its bytes. Rejects with the trouble "not-readable" for a folder, and for what went away since. */
export async function readFile(file: Pick<File, 'name' | 'arrayBuffer'>): Promise<ReadFile> {
  // Names on a disk need be no text; the cut may fall within a character
  const name = file.name.slice(-longestName).toWellFormed()
  try {
    return { name, content: new Uint8Array(await file.arrayBuffer()) }
  } catch {
    throw new Trouble(
      'not-readable',
      `"${name}" cannot be read: it is a folder, or it is no longer where it was.`,
      'Open the folder and choose the files in it.',
    )
  }
}
