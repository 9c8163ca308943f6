import { nextRunning } from '#domain/programme/labels/label.ts'

/** As many running numbers as are wanted, in their order, each of which makes a label. Throws RangeError as nextRunning. */
export function nextRunnings(after: number, count: number): number[] {
  const found: number[] = []
  for (let last = after; found.length < count; found.push(last)) last = nextRunning(last)
  return found
}
