import type { AgeingAnswer } from '#contract/findings/ageing.ts'
import {
  belowSentence,
  boardsSentence,
  changesAnswer,
  fewAgesSentence,
  modelsSentence,
  togetherSentences,
} from '#words/findings/ageingWords.ts'
import { linesOf } from '#words/findings/answerWords.ts'
import { allAgesWords, basisSentence, changedMethod } from '#words/findings/basisWords.ts'
import { treatmentWords } from '#words/findings/treatmentWords.ts'
import { useAnswer } from '../../../host/useAnswer.ts'
import { Notice } from '../../../widgets/Notice.tsx'
import { Blocks } from '../Blocks.tsx'
import { FindingsProgress } from '../FindingsProgress.tsx'
import { ageingQuestionOf, treatmentOf, treatmentOfMeans } from '../findingsQuestions.ts'
import { KeepFinding } from '../kept/KeepFinding.tsx'
import { useOrigin } from '../useOrigin.ts'
import type { FindingsView } from '../view.ts'
import { AgeingFigures } from './AgeingFigures.tsx'
import { BoardsTable, LinesTable, ModelsTable, StrengthsTable } from './AgeingTables.tsx'
import { agedPictures } from './agedPictures.ts'

/** More series than this are told in the table alone. */
const mostTold = 4

/** What changed with age: the answer in sentences, the figures, the tables, and the blocks of all ages. */
export function AgeingPart(view: FindingsView) {
  const { settings } = view
  const question = ageingQuestionOf(settings)
  const ageing = useAnswer('findings.ageing', question)
  return (
    <>
      <Notice trouble={ageing.error} />
      {ageing.pending ? <FindingsProgress /> : null}
      {ageing.value === null ? null : (
        <Told view={view} ageing={ageing.value} sharePercent={question.sharePercent ?? 80} />
      )}
      <Blocks {...view} ageMonths="all" />
    </>
  )
}

function Told({ view, ageing, sharePercent }: { view: FindingsView; ageing: AgeingAnswer; sharePercent: number }) {
  const { found, settings, name } = view
  const treatment = treatmentOf(settings)
  const origin = useOrigin(view, treatmentWords(treatment))
  const basis = basisSentence(linesOf(found.lines, 'group-summary'), {
    ...{ age: allAgesWords, treatment: treatmentWords(treatmentOfMeans(settings)) },
    method: changedMethod(treatment.woodFailure === 'censored' ? treatmentWords(treatment) : null),
  })
  const sentences = [...answerSentences(view, ageing), basis]
  const pictures = agedPictures(found, ageing, { treatment, sharePercent, name })
  return (
    <>
      <section aria-label="Answer" className="findings-answer">
        {sentences.map((sentence) => (
          <p key={sentence}>{sentence}</p>
        ))}
        <KeepFinding settings={settings} said={sentences} />
        <AgeingFigures pictures={pictures} origin={origin} />
      </section>
      <StrengthsTable {...view} />
      <LinesTable view={view} ageing={ageing} />
      <ModelsTable {...view} />
      <BoardsTable name={name} boards={ageing.boards} />
    </>
  )
}

function answerSentences({ found, name }: FindingsView, { series, together, boards }: AgeingAnswer): string[] {
  const changes = changesAnswer(linesOf(found.lines, 'retention'), name)
  const few = fewAgesSentence(series, name)
  const models = linesOf(found.lines, 'ageing-model')
  const each = series.length > mostTold ? [] : series.filter(({ curve }) => curve !== null)
  const told = each.flatMap((one) => [
    modelsSentence(
      models.filter(({ group }) => group === one.group),
      name,
    ),
    belowSentence(one, name),
  ])
  return [
    ...(changes.length > 0 ? changes : ['No group was broken at two ages yet.']),
    ...togetherSentences({ together }),
    ...[few, ...told].filter((sentence) => sentence !== null),
    ...boards.map(boardsSentence),
  ]
}
