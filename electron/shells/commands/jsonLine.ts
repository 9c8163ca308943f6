import { visibleJson } from '#words/visibleText.ts'

/** One line of NDJSON. What is not finite cannot be had, and is null. */
export function jsonLine(value: unknown): string {
  return jsonText(value, 0)
}

/** The same over several lines, to be read and changed by people: what cannot be seen is escaped, and stays what it is. */
export function jsonPage(value: unknown): string {
  return jsonText(value, 2)
}

function jsonText(value: unknown, indent: number): string {
  const finite = (_key: string, part: unknown) => (typeof part === 'number' && !Number.isFinite(part) ? null : part)
  return `${visibleJson(JSON.stringify(value, finite, indent))}\n`
}

/** What a command says of its JSON that tells what an archive then holds. */
export const archiveJson = 'With --json: {archive, specimens, breaks}.'
