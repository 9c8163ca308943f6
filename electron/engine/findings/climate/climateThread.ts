import type { ReaderOpening } from '#archive/archiveReader.ts'
import type { ClimateLimits, ClimateMapping, ClimateStore } from '#contract/findings/climate.ts'
import type { ClimateOfStore, ClimateProposal, ExposureClimate } from '#contract/findings/climateAnswers.ts'
import type { LoggerFile } from '#exchange/climate/readLogger.ts'
import { type QuestionThread, questionThread } from '../../core/questionThread.ts'

type File = { fileName: string; content: Uint8Array }

/** What the thread of the climate can be asked, and what it answers. */
export type ClimateOrder =
  | ({ kind: 'propose'; sheet: string | null; headerRow: number | null; earlier: ClimateMapping[] } & File)
  | ({ kind: 'read'; mapping: ClimateMapping; nowS: number } & File)
  | { kind: 'of'; opening: ReaderOpening; store: ClimateStore; limits: ClimateLimits; today: string }
  | { kind: 'exposures'; opening: ReaderOpening }
export type ClimateReply = {
  propose: ClimateProposal
  read: LoggerFile
  of: ClimateOfStore
  exposures: ExposureClimate[]
}

/** The thread in which files of loggers are read and climates worked out. */
export type ClimateThread = QuestionThread<ClimateOrder, unknown>

/** Starts no thread yet. */
export const climateThread = (): ClimateThread => questionThread('climateWorker')
