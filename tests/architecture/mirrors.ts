import { posix } from 'node:path'
import ts from 'typescript'

const deciding = new Set<ts.SyntaxKind>([
  ts.SyntaxKind.IfStatement,
  ts.SyntaxKind.ConditionalExpression,
  ts.SyntaxKind.SwitchStatement,
  ts.SyntaxKind.ForStatement,
  ts.SyntaxKind.ForOfStatement,
  ts.SyntaxKind.ForInStatement,
  ts.SyntaxKind.WhileStatement,
  ts.SyntaxKind.DoStatement,
  ts.SyntaxKind.PostfixUnaryExpression,
])
const computing = new Set<ts.SyntaxKind>([
  ts.SyntaxKind.PlusToken,
  ts.SyntaxKind.MinusToken,
  ts.SyntaxKind.AsteriskToken,
  ts.SyntaxKind.SlashToken,
  ts.SyntaxKind.PercentToken,
  ts.SyntaxKind.AsteriskAsteriskToken,
  ts.SyntaxKind.PlusEqualsToken,
  ts.SyntaxKind.MinusEqualsToken,
  ts.SyntaxKind.LessThanToken,
  ts.SyntaxKind.LessThanEqualsToken,
  ts.SyntaxKind.GreaterThanToken,
  ts.SyntaxKind.GreaterThanEqualsToken,
  ts.SyntaxKind.EqualsEqualsEqualsToken,
  ts.SyntaxKind.ExclamationEqualsEqualsToken,
  ts.SyntaxKind.AmpersandAmpersandToken,
  ts.SyntaxKind.BarBarToken,
])

/** Whether a source text decides or computes anything in a function: a branch, a loop, a comparison or arithmetic. */
export function hasLogic(path: string, text: string): boolean {
  const source = ts.createSourceFile(path, text, ts.ScriptTarget.Latest, true)
  const decides = (node: ts.Node, inFunction: boolean): boolean => {
    if (ts.isTypeNode(node)) return false
    if (inFunction && deciding.has(node.kind)) return true
    if (inFunction && ts.isBinaryExpression(node) && computing.has(node.operatorToken.kind)) return true
    const inside = inFunction || ts.isFunctionLike(node)
    return ts.forEachChild(node, (child) => decides(child, inside) || undefined) ?? false
  }
  return decides(source, false)
}

/** A line of a source file that names the spec by which its rules are held, where that is not its mirror. */
const heldBy = /^\/\/ Held by (tests\/\S+\.spec\.tsx?)\.$/m

/** The spec that a source file names; null where it names none. */
export function namedSpec(text: string): string | null {
  return text.match(heldBy)?.[1] ?? null
}

/** Every module that a file imports, or imports through others, as a value, as a type or while it runs. */
export function reachedFrom(
  from: string,
  files: readonly string[],
  read: (path: string) => string,
): ReadonlySet<string> {
  const known = new Set(files)
  const reached = new Set<string>()
  const open = [from]
  for (let path = open.pop(); path !== undefined; path = open.pop()) {
    if (reached.has(path) || !known.has(path)) continue
    reached.add(path)
    for (const [, specifier] of read(path).matchAll(/['"]((?:#|\.\.?\/)[^'"\n]+\.(?:tsx?|mjs))['"]/g))
      open.push(fileOf(specifier!, path))
  }
  return reached
}

/** The file that a specifier names, an alias of package.json or a relative path. */
function fileOf(specifier: string, from: string): string {
  if (!specifier.startsWith('#')) return posix.join(posix.dirname(from), specifier)
  const path = specifier.slice(1)
  return /^(renderer|tests)\//.test(path) ? path : `electron/${path}`
}

/** The spec that mirrors a source file, by its path alone. */
export function mirrorOf(path: string): string {
  return `tests/${path.replace(/^electron\//, '')}`.replace(/\.m?(tsx?)$/, '.spec.$1')
}
