import { existsSync } from 'node:fs'
import { homedir } from 'node:os'
import { extname, isAbsolute, join, resolve } from 'node:path'
import { Trouble } from '#contract/errors.ts'

/**
 * The file that a person means by what was typed or chosen, whole. `make`: it is to be a new one, and gets the usual ending
 * where none was given. Throws Trouble `invalid-input` for a path that is not whole, `not-found` and `conflict`.
 */
export function fileAskedFor(typed: string, make: boolean, home = homedir()): string {
  const words = typed.trim()
  const path = /^~[\\/]/.test(words) ? join(home, words.slice(2)) : words
  if (!isAbsolute(path))
    throw new Trouble(
      'invalid-input',
      `"${words}" does not say where the file lies.`,
      `Write the whole path, from the top: ${join(home, 'loft.breakledger')}, for one.`,
    )
  const whole = resolve(make && extname(path) === '' ? `${path}.breakledger` : path)
  if (make && existsSync(whole))
    throw new Trouble('conflict', `${whole} exists already.`, 'Open it, or give the new archive another name.')
  if (!make && !existsSync(whole))
    throw new Trouble('not-found', `There is no file ${whole}.`, 'Look at the path, or make a new archive there.')
  return whole
}
