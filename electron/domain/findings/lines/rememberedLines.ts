import type { FindingLine } from '#contract/findings/lines.ts'
import type { FindingUnit } from './findingUnit.ts'

/** Findings that are asked for again and again: a part is worked out once for as long as what it rests on stays. */
export type RememberedLines<Line = FindingLine> = {
  /**
   * The lines of all parts; `computed` counts those that had to be worked out. Hears after each part how many are done.
   */
  linesOf(
    units: readonly FindingUnit<Line>[],
    onProgress: (done: number, total: number) => void,
  ): { lines: Line[]; computed: number }
}

/** Parts of so many questions before this one are kept: more than a page asks at once, or each would push out what the next needs. */
const keptQuestions = 16

/** Keeps the parts of the last questions. Checked: tests/domain/findings/lines/rememberedLines.spec.ts. */
export function rememberLines<Line = FindingLine>(): RememberedLines<Line> {
  const questions: Map<string, readonly Line[]>[] = []
  return {
    linesOf(units, onProgress) {
      const now = new Map<string, readonly Line[]>()
      let computed = 0
      const lines = units.flatMap(({ key, lines: work }, i) => {
        let found = questions.map((one) => one.get(key)).find((one) => one !== undefined)
        if (found === undefined) {
          found = [...work()]
          computed += 1
        }
        now.set(key, found)
        onProgress(i + 1, units.length)
        return found
      })
      questions.unshift(now)
      questions.splice(keptQuestions)
      return { lines, computed }
    },
  }
}
