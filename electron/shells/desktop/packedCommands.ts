import { join } from 'node:path'
import { pathToFileURL } from 'node:url'

const commandSwitch = '--command'

/**
 * Runs a command in place of the window when the program was started with `--command`: resolves with its exit code, or null
 * when it was not. The installed launcher starts the program so, since its binary runs no script as plain Node.
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
  return Number(process.exitCode ?? 0)
}

/** Whether the process was started to run a command. */
export const isCommandStart = (words: readonly string[]): boolean => words.includes(commandSwitch)
