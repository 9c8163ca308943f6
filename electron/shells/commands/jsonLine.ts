import { visibleJson } from '#words/visibleText.ts'

/** One line of NDJSON. What is not finite cannot be had, and is null. */
export function jsonLine(value: unknown): string {
  const text = JSON.stringify(value, (_key, part) => (typeof part === 'number' && !Number.isFinite(part) ? null : part))
  return `${visibleJson(text)}\n`
}

/** What a command says of its JSON that tells what an archive then holds. */
export const archiveJson = 'With --json: {archive, specimens, breaks}.'
