/** One line of NDJSON. What is not finite cannot be had, and is null. */
export function jsonLine(value: unknown): string {
  return `${JSON.stringify(value, (_key, part) => (typeof part === 'number' && !Number.isFinite(part) ? null : part))}\n`
}
