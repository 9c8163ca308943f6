import type { ArchiveReader } from '#archive/archiveReader.ts'
import type { NextAnswer, NextQuestion } from '#contract/findings/next.ts'
import type { FindingsFilter } from '#contract/findings/procedures.ts'
import type { RememberedLines } from '#domain/findings/lines/rememberedLines.ts'
import { type NextPart, nextUnits } from '#domain/findings/next/nextParts.ts'
import { studyPulls } from '#domain/programme/calendar/studyPulls.ts'
import type { SeriesCount } from '#domain/programme/stock/studyStock.ts'
import { naturalKey } from '#domain/text/naturalOrder.ts'
import { askedResults } from './askedResults.ts'

/** How surely a difference is to be found, where no study says so. */
const usual = { confidence: 0.95, power: 0.8 }
const calling = new Set(['soon', 'due', 'late', 'missed'])

/** What there is to do next, from results, shelves and pulls of an archive as they are on a day; hears how many parts are done. */
export function answerNext(
  archive: Pick<ArchiveReader, 'observations' | 'pullSources' | 'seriesCounts'>,
  { filter, changePercentPerYear, marginPercent, referenceAdhesive }: NextQuestion,
  memory: RememberedLines<NextPart>,
  onProgress: (done: number, total: number) => void,
  today: string,
): NextAnswer {
  const sources = archive.pullSources(filter.studyId).rows
  const named = sources.flatMap(({ study }) => study.fields.referenceAdhesive ?? [])
  const references = referenceAdhesive === null ? [...new Set(named)] : [referenceAdhesive]
  // A reference is held against the others whatever adhesive is asked about
  const adhesives = filter.adhesives === null ? null : [...new Set([...filter.adhesives, ...references])]
  const { blocks, groups } = askedResults(archive.observations(), { ...filter, adhesives })
  const units = nextUnits(
    {
      blocks: blocks.filter(({ excludedBecause }) => excludedBecause === null),
      groups,
      shelves: sources.map((source) => ({
        source,
        counts: archive.seriesCounts(source.study.studyId).filter(fits(filter)),
      })),
    },
    {
      ...{ ...usual, today, changePercentPerYear, marginPercent, references },
      isAsked: (adhesive) => filter.adhesives === null || filter.adhesives.includes(adhesive),
    },
  )
  const { lines, computed } = memory.linesOf(units, onProgress)
  return {
    today,
    due: sources.flatMap((source) => studyPulls(source, today)).filter(({ state }) => calling.has(state)),
    shelf: lines.flatMap((part) => (part.of === 'shelf' ? [part.found] : [])),
    compared: lines.reduce((sum, part) => (part.of === 'compared' ? sum + part.found : sum), 0),
    undecided: lines.flatMap((part) => (part.of === 'undecided' ? [part.found] : [])),
    suspicious: lines.flatMap((part) => (part.of === 'suspicious' ? [part.found] : [])),
    ...{ groups, references, ...usual, computed },
  }
}

/** Series of studies that a filter of results lets through; their names may be written in another case. */
function fits({ adhesives, jointTypes, exposures, bondLineGapsMm }: FindingsFilter): (one: SeriesCount) => boolean {
  const among = (list: readonly string[] | null, name: string) =>
    list === null || list.some((one) => naturalKey(one) === naturalKey(name))
  return ({ adhesive, jointType, exposure, gapMm }) =>
    among(adhesives, adhesive) &&
    among(jointTypes, jointType) &&
    among(exposures, exposure) &&
    (bondLineGapsMm === null || bondLineGapsMm.includes(gapMm))
}
