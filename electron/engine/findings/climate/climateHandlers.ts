import { createHash } from 'node:crypto'
import type { ClimateImport, ClimateMapping, ClimateStore } from '#contract/findings/climate.ts'
import type { ClimateOutcome } from '#contract/findings/climateAnswers.ts'
import { type climateProcedures, refuseLargeLoggerFile } from '#contract/findings/climateProcedures.ts'
import type { HandlersOf } from '#contract/procedures.ts'
import { localDayOf } from '#domain/programme/calendar/calendarDay.ts'
import { climateOutcome } from '#exchange/climate/loggerOutcome.ts'
import type { HandlerParts } from '../../core/handlerParts.ts'
import type { ClimateOrder, ClimateReply, ClimateThread } from './climateThread.ts'

type Asked = { fileName: string; content: Uint8Array; mapping: ClimateMapping; store: ClimateStore }

/** Climate of the stores: one question after the other, in a thread of its own. */
export function climateHandlers(
  { archive, clock, tasks, emit, program, demo }: HandlerParts,
  thread: ClimateThread,
): HandlersOf<typeof climateProcedures> {
  const inTurn = <Result>(work: (signal: AbortSignal) => Promise<Result>) => tasks.runInTurn('climate', work)

  function ask<Kind extends ClimateOrder['kind']>(
    order: Extract<ClimateOrder, { kind: Kind }>,
    signal: AbortSignal,
  ): Promise<ClimateReply[Kind]> {
    const told = (done: number, total: number) => emit('task.progress', { task: 'climate', done, total })
    return thread.ask(order, signal, told) as Promise<ClimateReply[Kind]>
  }

  const opening = async () => ({ path: (await archive.info()).path, program, instant: clock.instant() })

  /** Reads a file and hands its readings on; `by` null: to be tried only. */
  async function bringIn({ fileName, content, mapping, store }: Asked, by: string | null): Promise<ClimateOutcome> {
    refuseLargeLoggerFile(fileName, content.length)
    return inTurn(async (signal) => {
      const recordedAt = clock.instant()
      const nowS = Math.floor(Date.parse(recordedAt) / 1000)
      const fileSha256 = createHash('sha256').update(content).digest('hex')
      const file = await ask({ kind: 'read', fileName, content, mapping, nowS }, signal)
      const { temperature, timeS, humidityPercent } = file.readings
      const readings = { temperature, timeS, humidityPercent }
      const temperatureUnit = mapping.temperature.unit
      if (by === null) {
        const judged = await archive.judgeReadings(store, temperatureUnit, readings)
        return climateOutcome(file, judged, { fileSha256, dryRun: true })
      }
      const simulated = await demo.isOpen()
      const kept: ClimateImport['mapping'] = JSON.parse(JSON.stringify(mapping))
      const said = {
        ...{ recordedAt, by, fileName, fileSha256, mapping: kept, temperatureUnit },
        ...{ rejected: file.rejectedCount, simulated },
      }
      const told = (progress: Parameters<typeof emit<'task.progress'>>[1]) => emit('task.progress', progress)
      const judged = await archive.storeReadings(told, signal, { store, readings, said })
      return climateOutcome(file, judged, { fileSha256, dryRun: false })
    })
  }

  return {
    'climate.propose': async ({ fileName, content, sheet, headerRow }) => {
      refuseLargeLoggerFile(fileName, content.length)
      const earlier = await archive.climateMappings()
      return inTurn((signal) => ask({ kind: 'propose', fileName, content, sheet, headerRow, earlier }, signal))
    },
    'climate.try': (asked) => bringIn(asked, null),
    'climate.import': ({ by, ...asked }) => bringIn(asked, by),
    'climate.imports': () => archive.climateImports(),
    'climate.decide': (decision) => archive.decideClimateImport({ ...decision, recordedAt: clock.instant() }),
    'climate.of': ({ store, limits }) =>
      inTurn(async (signal) => {
        const today = localDayOf(clock.instant())
        return ask({ kind: 'of', opening: await opening(), store, limits, today }, signal)
      }),
    'climate.exposures': () => inTurn(async (signal) => ask({ kind: 'exposures', opening: await opening() }, signal)),
  }
}
