import ts from 'typescript'

/** One change of a source text: what stands in [from, to) becomes `mutant`. */
export type Mutation = {
  readonly from: number
  readonly to: number
  readonly line: number
  /** The smallest expression around the change, as it stands and as it becomes. */
  readonly original: string
  readonly changed: string
  readonly mutant: string
}

const swapped = new Map<ts.SyntaxKind, readonly string[]>([
  [ts.SyntaxKind.LessThanToken, ['<=', '>=']],
  [ts.SyntaxKind.LessThanEqualsToken, ['<', '>']],
  [ts.SyntaxKind.GreaterThanToken, ['>=', '<=']],
  [ts.SyntaxKind.GreaterThanEqualsToken, ['>', '<']],
  [ts.SyntaxKind.EqualsEqualsEqualsToken, ['!==']],
  [ts.SyntaxKind.ExclamationEqualsEqualsToken, ['===']],
  [ts.SyntaxKind.PlusToken, ['-']],
  [ts.SyntaxKind.MinusToken, ['+']],
  [ts.SyntaxKind.PlusEqualsToken, ['-=']],
  [ts.SyntaxKind.MinusEqualsToken, ['+=']],
  [ts.SyntaxKind.AmpersandAmpersandToken, ['||']],
  [ts.SyntaxKind.BarBarToken, ['&&']],
])

/** Counts and small whole numbers move by one, anything else by a tenth. */
const largestStepped = 10
/** Below this a number is room for rounding: a tenth of it is nothing, so it is taken away and made a thousand times as large. */
const largestRoom = 1e-5

function changedNumbers(text: string): string[] {
  const value = Number(text.replaceAll('_', ''))
  if (value !== 0 && value <= largestRoom) return ['0', plain(value * 1000)]
  if (!Number.isInteger(value)) return [plain(value * 1.1), plain(value * 0.9)]
  // Below 0 a boundary says what it says when it is moved.
  if (value === 0) return ['1']
  if (value <= largestStepped) return [String(value + 1), String(value - 1)]
  return [String(Math.ceil(value * 1.1)), String(Math.floor(value * 0.9))]
}

function plain(value: number): string {
  return String(Number(value.toPrecision(6)))
}

function isText(node: ts.Node): boolean {
  return ts.isStringLiteralLike(node) || ts.isTemplateExpression(node)
}

function addsText(node: ts.Node): boolean {
  if (isText(node)) return true
  if (ts.isParenthesizedExpression(node)) return addsText(node.expression)
  return (
    ts.isBinaryExpression(node) &&
    node.operatorToken.kind === ts.SyntaxKind.PlusToken &&
    (addsText(node.left) || addsText(node.right))
  )
}

/** Whether nothing below a node is mutated: see the head of mutants.ts. */
function isLeftOut(node: ts.Node): boolean {
  return (
    ts.isTypeNode(node) ||
    ts.isTypeAliasDeclaration(node) ||
    ts.isInterfaceDeclaration(node) ||
    ts.isImportDeclaration(node) ||
    ts.isTemplateExpression(node) ||
    ts.isThrowStatement(node) ||
    isHalving(node)
  )
}

/** `(low + high) >>> 1`: a search that cuts elsewhere still finds the same. */
function isHalving(node: ts.Node): boolean {
  return ts.isBinaryExpression(node) && node.operatorToken.kind === ts.SyntaxKind.GreaterThanGreaterThanGreaterThanToken
}

/**
 * Every change of a number, a comparison or a sign that a source text allows, in the order of the text, one at a time.
 */
export function mutationsOf(text: string): Mutation[] {
  const source = ts.createSourceFile('source.ts', text, ts.ScriptTarget.Latest, true)
  const found: Mutation[] = []

  function add(node: ts.Node, whole: ts.Node, mutants: readonly string[]): void {
    const [from, to] = [node.getStart(source), node.getEnd()]
    const [wholeFrom, wholeTo] = [whole.getStart(source), whole.getEnd()]
    const line = source.getLineAndCharacterOfPosition(from).line + 1
    for (const mutant of mutants)
      found.push({
        from,
        to,
        line,
        mutant,
        original: oneLine(text.slice(wholeFrom, wholeTo)),
        changed: oneLine(text.slice(wholeFrom, from) + mutant + text.slice(to, wholeTo)),
      })
  }

  function visit(node: ts.Node): void {
    if (isLeftOut(node)) return
    if (ts.isNumericLiteral(node) && !isName(node)) add(node, surroundings(node), changedNumbers(node.getText(source)))
    if (ts.isBinaryExpression(node) && !addsText(node))
      add(node.operatorToken, node, swapped.get(node.operatorToken.kind) ?? [])
    if (ts.isPrefixUnaryExpression(node) && node.operator === ts.SyntaxKind.MinusToken)
      add(node, surroundings(node), [`(${node.operand.getText(source)})`])
    ts.forEachChild(node, visit)
  }

  visit(source)
  return found.sort((a, b) => a.from - b.from)
}

function isName(node: ts.NumericLiteral): boolean {
  return ts.isPropertyAssignment(node.parent) && node.parent.name === node
}

/** The expression or declaration around a number, so that a survivor can be read without opening the file. */
function surroundings(node: ts.Node): ts.Node {
  let { parent } = node
  while (ts.isParenthesizedExpression(parent) || ts.isPrefixUnaryExpression(parent)) parent = parent.parent
  const tells = ts.isExpression(parent) || ts.isVariableDeclaration(parent) || ts.isPropertyAssignment(parent)
  return tells && parent.getText().length < 120 ? parent : node
}

function oneLine(text: string): string {
  return text.replace(/\s+/g, ' ')
}

/** The text with one change made. */
export function mutated(text: string, { from, to, mutant }: Mutation): string {
  return text.slice(0, from) + mutant + text.slice(to)
}
