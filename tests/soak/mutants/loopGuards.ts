import ts from 'typescript'

/**
 * A source text whose every loop calls `countLoopTurn` in each turn, which watchedRun.ts lets throw after too many: a mutant
 * may loop for ever, and nothing outside can stop a thread that does. No line moves.
 */
export function withLoopGuards(text: string): string {
  const source = ts.createSourceFile('source.ts', text, ts.ScriptTarget.Latest, true)
  const insertions: { at: number; what: string }[] = []
  const visit = (node: ts.Node): void => {
    if (ts.isIterationStatement(node, false)) {
      const { statement } = node
      const [from, to] = [statement.getStart(source), statement.getEnd()]
      if (ts.isBlock(statement)) insertions.push({ at: from + 1, what: 'countLoopTurn();' })
      else insertions.push({ at: from, what: '{countLoopTurn();' }, { at: to, what: '}' })
    }
    ts.forEachChild(node, visit)
  }
  visit(source)
  return insertions
    .toSorted((one, other) => other.at - one.at)
    .reduce((guarded, { at, what }) => guarded.slice(0, at) + what + guarded.slice(at), text)
}
