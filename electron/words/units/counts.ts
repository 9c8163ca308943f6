import { writeCount } from './numbers.ts'

/** "312 of 5,000". */
export function ofWords(done: number, total: number): string {
  return `${writeCount(done)} of ${writeCount(total)}`
}

/** "1 break", "5,000 breaks"; `many`: the word for several, where an s is not enough. */
export function countOf(count: number, one: string, many = `${one}s`): string {
  return `${writeCount(count)} ${count === 1 ? one : many}`
}
