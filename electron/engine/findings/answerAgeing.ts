import type { ArchiveReader } from '#archive/archiveReader.ts'
import type { AgeingAnswer, AgeingQuestion } from '#contract/findings/ageing.ts'
import { type AgeingPart, ageingUnits } from '#domain/findings/ageing/ageingParts.ts'
import type { RememberedLines } from '#domain/findings/lines/rememberedLines.ts'
import { plannedAges } from '#domain/programme/study/plannedAges.ts'
import { askedResults } from './askedResults.ts'

/** Without a plan a series is looked at to thirty years, months. */
const endWithoutPlan = 360

/** Results of an archive over their ages, as they are now, to the end of what its studies plan; hears how many parts are done. */
export function answerAgeing(
  archive: Pick<ArchiveReader, 'observations' | 'pullSources'>,
  { filter, ...question }: AgeingQuestion,
  memory: RememberedLines<AgeingPart>,
  onProgress: (done: number, total: number) => void,
): AgeingAnswer {
  const { observations, groups } = askedResults(archive.observations(), filter)
  const agesOf = plannedAges(archive.pullSources(filter.studyId).rows.map(({ study }) => study.fields))
  const planned = new Map(groups.map((group) => [group.key, agesOf(group)]))
  const units = ageingUnits(observations, question, (group) => planned.get(group)?.at(-1) ?? endWithoutPlan)
  const { lines, computed } = memory.linesOf(units, onProgress)
  return {
    series: lines.flatMap((part) => {
      if (part.of !== 'series') return []
      const last = part.found.agesMonths.at(-1)!
      return [{ ...part.found, upcomingMonths: (planned.get(part.found.group) ?? []).filter((age) => age > last) }]
    }),
    together: lines.find((part) => part.of === 'together')?.found ?? null,
    boards: lines.flatMap((part) => (part.of === 'boards' ? [part.found] : [])),
    computed,
  }
}
