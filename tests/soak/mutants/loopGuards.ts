import ts from 'typescript'

/**
 * A source text whose every loop calls `countLoopTurn` in each turn with a number of its own, from `first` on, which
 * watchedRun.ts lets throw after too many: a mutant may loop for ever, and nothing outside can stop a thread that does. No
 * line moves.
 */
export function withLoopGuards(text: string, first: number): { guarded: string; loops: number } {
  const source = ts.createSourceFile('source.ts', text, ts.ScriptTarget.Latest, true)
  const insertions: { at: number; what: string }[] = []
  let loops = 0
  const visit = (node: ts.Node): void => {
    if (ts.isIterationStatement(node, false)) {
      const { statement } = node
      const [from, to] = [statement.getStart(source), statement.getEnd()]
      const count = `countLoopTurn(${first + loops});`
      loops += 1
      if (ts.isBlock(statement)) insertions.push({ at: from + 1, what: count })
      else insertions.push({ at: from, what: `{${count}` }, { at: to, what: '}' })
    }
    ts.forEachChild(node, visit)
  }
  visit(source)
  const guarded = insertions
    .toSorted((one, other) => other.at - one.at)
    .reduce((before, { at, what }) => before.slice(0, at) + what + before.slice(at), text)
  return { guarded, loops }
}
