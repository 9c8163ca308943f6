import ts from 'typescript'

/** A function longer than it should be, with the line on which it begins. */
export type LongFunction = { name: string; line: number; lines: number }

/** Functions of a source text that take more than so many lines, from the first word of their head to their last brace. */
export function longFunctions(path: string, text: string, mostLines: number): LongFunction[] {
  const source = ts.createSourceFile(path, text, ts.ScriptTarget.Latest, true)
  const found: LongFunction[] = []
  const lineAt = (position: number) => source.getLineAndCharacterOfPosition(position).line + 1

  function look(node: ts.Node): void {
    if (ts.isFunctionLike(node) && 'body' in node && node.body !== undefined) {
      const line = lineAt(node.getStart(source))
      const lines = lineAt(node.getEnd()) - line + 1
      if (lines > mostLines) found.push({ name: nameOf(node), line, lines })
    }
    ts.forEachChild(node, look)
  }
  look(source)
  return found
}

function nameOf(node: ts.SignatureDeclaration): string {
  if (node.name !== undefined) return node.name.getText()
  const { parent } = node
  return ts.isVariableDeclaration(parent) || ts.isPropertyAssignment(parent) ? parent.name.getText() : 'a function'
}
