import { rankFigure } from '#figures/findings/rankFigure.ts'
import { linesOf } from '#words/findings/answerWords.ts'
import { treatmentWords } from '#words/findings/treatmentWords.ts'
import { ExportedFigure } from '../../parts/figures/ExportedFigure.tsx'
import { treatmentOfMeans } from './findingsQuestions.ts'
import { useOrigin } from './useOrigin.ts'
import type { FindingsView } from './view.ts'

/** The groups in their places, each with the places that the data leave possible; nothing where fewer than two are ranked. */
export function Ranking(view: FindingsView) {
  const { found, settings, ageMonths, name } = view
  const origin = useOrigin(view, treatmentWords(treatmentOfMeans(settings)))
  const groups = linesOf(found.lines, 'rank', ageMonths).flatMap(({ group, rank, rankLow, rankHigh, firstShare }) =>
    rank === null || rankLow === null || rankHigh === null || firstShare === null
      ? []
      : [{ name: name(group), rank, low: rankLow, high: rankHigh, firstShare }],
  )
  return groups.length < 2 ? null : <ExportedFigure draw={(size) => rankFigure(groups, size)} origin={origin} />
}
