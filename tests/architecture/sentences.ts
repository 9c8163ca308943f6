import ts from 'typescript'

/** A piece of text that product code may show, where it stands, with `{}` for what is put in. */
export type SaidText = { text: string; path: string; line: number }

/** Every string, template and text of JSX in a source, with white space made single. Modules named by an import are left out. */
export function textsOf(path: string, source: string): SaidText[] {
  const file = ts.createSourceFile(path, source, ts.ScriptTarget.Latest, true)
  const found: SaidText[] = []
  const add = (node: ts.Node, text: string) =>
    found.push({
      text: text.replace(/\s+/g, ' ').trim(),
      path,
      line: file.getLineAndCharacterOfPosition(node.getStart(file)).line + 1,
    })
  const walk = (node: ts.Node): void => {
    if (ts.isImportDeclaration(node) || ts.isExportDeclaration(node)) return
    if (ts.isStringLiteralLike(node) || ts.isJsxText(node)) add(node, node.text)
    if (ts.isTemplateExpression(node))
      add(node, node.head.text + node.templateSpans.map(({ literal }) => `{}${literal.text}`).join(''))
    ts.forEachChild(node, walk)
  }
  walk(file)
  return found
}

/**
 * The sentences of a text as they are compared, without capitals and marks: longer than 25 characters and closed with a full
 * stop, or of more than six words. Formulas and statements of SQL, which have a sign of equality, are none.
 */
export function sentencesOf(text: string): string[] {
  return text.split(/(?<=[.!?]) /).flatMap((part) => {
    const words = part.toLowerCase().match(/[\p{L}’']{2,}|\{\}/gu) ?? []
    const isSentence = (part.length > 25 && /[.!?]$/.test(part) && words.length > 3) || words.length > 6
    return isSentence && !part.includes('=') ? [words.join(' ')] : []
  })
}

/** Sentences that stand at more than one place, each with its places. */
export function saidTwice(texts: readonly SaidText[]): string[] {
  const said = texts.flatMap(({ text, path, line }) =>
    sentencesOf(text).map((sentence) => ({ sentence, place: `${path}:${line}` })),
  )
  return [...Map.groupBy(said, ({ sentence }) => sentence)]
    .filter(([, places]) => places.length > 1)
    .map(([sentence, places]) => `${places.map(({ place }) => place).join(', ')}: ${sentence}`)
}
