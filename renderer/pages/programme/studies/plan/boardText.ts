import type { StudyFields } from '#contract/programme/study.ts'

type Boards = StudyFields['boards']

/** A name, then how many blocks it gives: "plank 1: 60", "plank 1 60", or two cells of a sheet. */
const line = /^(.*?)[\s:=;,]+(\d{1,6})$/

/** Boards from a text of one a line, or one clear sentence that names the line. */
export function readBoards(text: string): { boards: Boards; error: string | null } {
  const boards: Boards = []
  for (const [index, typed] of text.split('\n').entries()) {
    if (typed.trim() === '') continue
    const [, name = '', blocks = '0'] = line.exec(typed.trim()) ?? []
    const wrong = wrongIn(name.trim(), Number(blocks), boards)
    if (wrong !== null) return { boards: [], error: `Line ${index + 1}, “${typed.trim()}”: ${wrong}` }
    boards.push({ name: name.trim(), blocks: Number(blocks) })
  }
  return { boards, error: null }
}

function wrongIn(name: string, blocks: number, before: Boards): string | null {
  if (name === '' || blocks < 1) return 'write the name of the board, then how many blocks it gives, as plank 1: 60.'
  if (blocks > 100_000) return 'no board gives so many blocks.'
  if (name.length > 200) return 'the name is too long.'
  return before.some((board) => board.name === name) ? 'this name stands twice.' : null
}

/** Boards as they stand in the field. */
export function boardsText(boards: Boards): string {
  return boards.map(({ name, blocks }) => `${name}: ${blocks}`).join('\n')
}

/** So many more boards with the next free numbers behind a name, below those that stand there. */
export function withMoreBoards(text: string, name: string, count: number, blocks: number): string {
  const taken = new Set(text.split('\n').map((one) => line.exec(one.trim())?.[1]?.trim() ?? one.trim()))
  const lines = text.trim() === '' ? [] : [text.trimEnd()]
  for (let number = 1, made = 0; made < count; number++) {
    if (taken.has(`${name} ${number}`)) continue
    lines.push(`${name} ${number}: ${blocks}`)
    made += 1
  }
  return lines.join('\n')
}
