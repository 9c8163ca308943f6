import { join } from 'node:path'
import { pathToFileURL } from 'node:url'

const commandSwitch = '--command'

/**
 * Runs a command in place of the window when the program was started with `--command`: resolves with its exit code once all
 * that it wrote has left, or with null when it was not. The installed launcher starts the program so, since its binary runs
 * no script as plain Node.
 * `load` is the import of the built commands, which read the words of the process themselves.
 */
export async function runPackedCommand(
  folder: string,
  load: (address: string) => Promise<unknown> = (address) => import(/* @vite-ignore */ address),
): Promise<number | null> {
  const at = process.argv.indexOf(commandSwitch)
  if (at < 0) return null
  // The commands expect the program and one more word before their own; switches of the engine may stand between.
  process.argv.splice(1, at - 1)
  await load(pathToFileURL(join(folder, 'commands.js')).href)
  // Electron ends at once when it is told to: a pipe that is read slowly would lose the rest.
  for (const stream of [process.stdout, process.stderr]) await written(stream)
  return Number(process.exitCode ?? 0)
}

/** Resolves when everything handed to the stream so far has been taken, or cannot be any more. */
const written = (stream: NodeJS.WriteStream) => new Promise<void>((resolve) => stream.write('', () => resolve()))

/** Whether the process was started to run a command. */
export const isCommandStart = (words: readonly string[]): boolean => words.includes(commandSwitch)
