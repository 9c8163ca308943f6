import { Trouble } from '#contract/errors.ts'

/** What is said of a file that could not be opened or read; what no disk throws stays as it is. */
export function unreadableFile(file: string, thrown: unknown): unknown {
  if (!(thrown instanceof Error) || !('code' in thrown)) return thrown
  if (thrown.code === 'ENOENT')
    return new Trouble('not-found', `${file}: there is no such file.`, 'Check the path and the name.')
  if (thrown.code === 'EACCES' || thrown.code === 'EPERM')
    return new Trouble('denied', `${file}: this user may not read the file.`, 'Allow reading it, or copy it elsewhere.')
  if (thrown.code === 'EISDIR')
    return new Trouble('not-readable', `${file}: this is a folder.`, 'Name the file inside it.')
  return new Trouble('not-readable', `${file}: cannot be read (${thrown.message}).`, 'Check the disk and the path.')
}
