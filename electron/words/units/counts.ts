import { writeCount } from './numbers.ts'

/** So many of something: "1 reading", "12 readings". */
export function countOf(count: number, one: string, many = `${one}s`): string {
  return count === 1 ? `1 ${one}` : `${writeCount(count)} ${many}`
}
