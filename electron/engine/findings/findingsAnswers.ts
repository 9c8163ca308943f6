import type { ArchiveReader } from '#archive/archiveReader.ts'
import type { FindingsSettings } from '#contract/findings/keptFinding.ts'
import type { AgeingPart } from '#domain/findings/ageing/ageingParts.ts'
import { rememberLines } from '#domain/findings/lines/rememberedLines.ts'
import type { NextPart } from '#domain/findings/next/nextParts.ts'
import { localDayOf } from '#domain/programme/calendar/calendarDay.ts'
import { answerAgeing } from './answerAgeing.ts'
import { answerFindings } from './answerFindings.ts'
import { answerNext } from './answerNext.ts'
import { changesSince, keptRows, resultsNow } from './keptFindings.ts'

/** Hears how many parts of an answer are done. */
export type OnProgress = (done: number, total: number) => void

/** What is kept from one question to the next. */
export function findingsMemory() {
  return { lines: rememberLines(), ageing: rememberLines<AgeingPart>(), next: rememberLines<NextPart>() }
}
type Memory = ReturnType<typeof findingsMemory>

type Answer<Question, Found> = (
  archive: ArchiveReader,
  question: Question,
  memory: Memory,
  onProgress: OnProgress,
  /** ISO 8601 instant of the question. */
  instant: string,
) => Found

const answer = <Question, Found>(one: Answer<Question, Found>) => one

/** All that the thread of the statistics can be asked, by the procedure that asks it or needs it. */
export const findingsAnswers = {
  'findings.of': answer((archive, question: Parameters<typeof answerFindings>[1], memory, onProgress) =>
    answerFindings(archive, question, memory.lines, onProgress),
  ),
  'findings.ageing': answer((archive, question: Parameters<typeof answerAgeing>[1], memory, onProgress) =>
    answerAgeing(archive, question, memory.ageing, onProgress),
  ),
  'findings.next': answer((archive, question: Parameters<typeof answerNext>[1], memory, onProgress, instant) =>
    answerNext(archive, question, memory.next, onProgress, localDayOf(instant)),
  ),
  'findings.kept': answer((archive, _question: Record<never, never>) => keptRows(archive)),
  'findings.changes': answer((archive, { keptFindingId }: { keptFindingId: number }) =>
    changesSince(archive, keptFindingId),
  ),
  'findings.keep': answer((archive, { settings }: { settings: FindingsSettings }) => resultsNow(archive)(settings)),
} as const

export type FindingsName = keyof typeof findingsAnswers
export type QuestionOf<Name extends FindingsName> = Parameters<(typeof findingsAnswers)[Name]>[1]
export type AnswerOf<Name extends FindingsName> = ReturnType<(typeof findingsAnswers)[Name]>
