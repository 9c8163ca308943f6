import { type RecordNoun, type Topic, topicsOf } from '#contract/topics.ts'
import type { Database } from './database.ts'

const touched = new WeakMap<Database, Set<Topic>>()

/** Notes, beside a write, what it touches: what was read of these topics says something else once the write is committed. */
export function touch(database: Database, ...topics: readonly Topic[]): void {
  const known = touched.get(database) ?? new Set<Topic>()
  touched.set(database, known)
  for (const topic of topics) known.add(topic)
}

/** What was touched since this was asked last, each topic once; where too many records of one kind were, the word for all of them. */
export function takeTouched(database: Database): Topic[] {
  const topics = touched.get(database) ?? []
  touched.delete(database)
  const taken = new Set<Topic>()
  const numbers = new Map<RecordNoun, number[]>()
  for (const topic of topics) {
    const [noun, number] = topic.split(' ')
    if (number === undefined) taken.add(topic)
    else {
      const ofNoun = numbers.get(noun as RecordNoun) ?? []
      numbers.set(noun as RecordNoun, ofNoun)
      ofNoun.push(Number(number))
    }
  }
  for (const [noun, of] of numbers) for (const topic of topicsOf(noun, of)) taken.add(topic)
  return [...taken]
}
