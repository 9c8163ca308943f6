import type { Attachment } from '#contract/specimens/attachment.ts'
import type { WoodReading } from '#contract/specimens/pictureProcedures.ts'
import type { SurfacesTold } from '#domain/strength/face/tornScores.ts'
import { countOf } from '../units/counts.ts'
import { instantWords } from '../units/times.ts'

/** A percent of wood failure to the nearest 5, as people record it. */
export function toNearest5(percent: number): number {
  return 5 * Math.round(percent / 5)
}

/** What was read from a picture last, or that nothing was. */
export function readingWords(readings: readonly WoodReading[]): string {
  const last = readings.at(-1)
  if (last === undefined) return 'Nothing read from it yet.'
  return `${last.decidedPercent} % wood failure decided, ${last.proposedPercent.toFixed(1)} % by the picture.`
}

/** Where a kept picture came from: when, from whom, how large. */
export function pictureFacts({ recordedAt, by, bytes }: Attachment): string {
  const from = by === '' ? '' : ` by ${by}`
  return `Added ${instantWords(recordedAt)}${from}, ${(bytes / 1e6).toFixed(1)} MB, kept as it came.`
}

/** A picture for whoever cannot see it. */
export function pictureName({ name }: Attachment): string {
  return `Photograph ${name}`
}

/** How far a proposal can be trusted, by what told the surfaces apart. */
export const toldWords: Readonly<Record<SurfacesTold, string>> = {
  colour: 'The two surfaces differ in colour, and the rougher one is taken for torn wood.',
  texture:
    'The two surfaces do not differ in colour, perhaps as the glue has the colour of the wood: the rougher parts are taken for torn wood. Look twice.',
  neither:
    'The picture shows no two surfaces that can be told apart: all glue, all wood, or a picture that is not sharp. There is no proposal; move the threshold, or decide by eye.',
}

/** More are counted, not named. */
const mostNamed = 10

/** Which of several pictures were not kept besides the first, which is told with its reason; '' for none. */
export function othersNotKept(names: readonly string[]): string {
  if (names.length === 0) return ''
  const named = names.slice(0, mostNamed).map((name) => `"${name}"`)
  const more = names.length - named.length
  return `Not kept either: ${named.join(', ')}${more === 0 ? '' : ` and ${countOf(more, 'other')}`}.`
}
