import type { StudyFields } from '#contract/programme/study.ts'
import { nameTooLong } from '#words/programme/catalogueWords.ts'
import { isListed } from './studyForm.ts'

export type Boards = StudyFields['boards']

/** A name, then how many blocks it gives: "plank 1: 60", "plank 1 = 60". */
const named = /^(.*?)\s*[:=,]\s*(\d+)$/

/** How many blocks a board gives, as it is typed; null: no number that a board could give. */
export function typedBlocks(text: string): number | null {
  return /^[1-9]\d{0,5}$/.test(text.trim()) && Number(text) <= 100_000 ? Number(text) : null
}

/**
 * The boards with those that are typed or chosen below them, or one clear sentence. Each gives what stands behind its name, or as a
 * cell of a sheet after it, and `usual` where nothing does.
 */
export function withBoards(
  before: Boards,
  texts: readonly string[],
  usual: string,
): { boards: Boards } | { error: string } {
  const boards = [...before]
  for (let at = 0; at < texts.length; at++) {
    const [, name = texts[at]!, own] = named.exec(texts[at]!) ?? []
    const cell = own === undefined && /^\d+$/.test(texts[at + 1] ?? '') ? texts[++at]! : own
    const blocks = typedBlocks(cell ?? usual)
    if (blocks === null) return { error: `Say how many blocks ${name} gives, from 1 to 100,000: as ${name}: 60.` }
    if (name === '') return { error: 'Write the name of the board before the number of its blocks.' }
    if (name.length > 200) return { error: nameTooLong }
    if (boards.some((board) => board.name === name)) return { error: isListed(name) }
    boards.push({ name, blocks })
  }
  return { boards }
}

/** So many more boards with the next free numbers behind a name. */
export function withMoreBoards(before: Boards, name: string, count: number, blocks: number): Boards {
  const taken = new Set(before.map((board) => board.name))
  const boards = [...before]
  for (let number = 1; boards.length < before.length + count; number++)
    if (!taken.has(`${name} ${number}`)) boards.push({ name: `${name} ${number}`, blocks })
  return boards
}
