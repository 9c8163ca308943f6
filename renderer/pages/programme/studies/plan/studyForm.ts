import { type Series, type StudyFields, studyFields } from '#contract/programme/study.ts'
import { cellKey, type StudyCell, seriesKey } from '#domain/programme/study/cells.ts'
import { planSizeFault } from '#domain/programme/study/planSize.ts'
import { planSizeWords } from '#words/programme/study/planSizeWords.ts'
import { inUnit } from '#words/units/notANumber.ts'
import { type Quantities, quantitiesIn } from '#words/units/quantities.ts'
import { askForDay } from '#words/units/typedDay.ts'
import { type FieldUnit, keptText, noUnit, readQuantity } from '#words/units/typedQuantity.ts'
import type { UnitFields } from '../../../../parts/forms/typedTexts.ts'
import { agesText, readAges } from './ageText.ts'

/** The form as typed; lists hold what was entered into them one by one. */
export type StudyTexts = {
  title: string
  question: string
  adhesives: readonly string[]
  jointTypes: readonly string[]
  exposures: readonly string[]
  gapsMm: readonly number[]
  ages: string
  leftOut: StudyFields['leftOut']
  blocksPerCell: string
  sparesPerSeries: string
  referenceAdhesive: string
  windowDays: string
  startOn: string
  overlapLengthMm: string
  overlapWidthMm: string
  areaMm2: string
  pieceLengthMm: string
  pieceWidthMm: string
  pieceThicknessMm: string
  wood: string
  boards: StudyFields['boards']
  cvPercent: string
  confidence: string
  power: string
  adhesiveGPerBlock: string
}

export type StudyErrors = Partial<Record<keyof StudyTexts, string>>

/** What a new study begins with. */
export const emptyStudy: StudyTexts = {
  ...{ title: '', question: '', adhesives: [], jointTypes: [], exposures: [], gapsMm: [], ages: '', leftOut: [] },
  ...{ blocksPerCell: '12', sparesPerSeries: '0', referenceAdhesive: '', windowDays: '7', startOn: '' },
  ...{ overlapLengthMm: '', overlapWidthMm: '', areaMm2: '' },
  ...{ pieceLengthMm: '', pieceWidthMm: '', pieceThicknessMm: '', wood: '', boards: [] },
  ...{ cvPercent: '', confidence: '95', power: '80', adhesiveGPerBlock: '' },
}

const lengthIn = ({ length }: Quantities) => length

/** The fields that have a unit. */
export const studyUnits: UnitFields<keyof StudyTexts> = {
  overlapLengthMm: lengthIn,
  overlapWidthMm: lengthIn,
  areaMm2: ({ area }) => area,
  pieceLengthMm: lengthIn,
  pieceWidthMm: lengthIn,
  pieceThicknessMm: lengthIn,
}

const inPercent: FieldUnit = { unit: '%', factor: 100 }

/** A study as a form begins with it, in SI units. */
export function textsOfStudy(fields: StudyFields): StudyTexts {
  const { length, area } = quantitiesIn('SI')
  const plain = (value: number | null) => keptText(value, noUnit)
  const named = (names: readonly string[]) => names.filter((name) => name !== '')
  return {
    ...{ title: fields.title, question: fields.question, wood: fields.wood, leftOut: fields.leftOut },
    adhesives: fields.adhesives,
    jointTypes: named(fields.jointTypes),
    exposures: named(fields.exposures),
    gapsMm: fields.gapsMm,
    ages: agesText(fields.agesMonths),
    blocksPerCell: plain(fields.blocksPerCell),
    sparesPerSeries: plain(fields.sparesPerSeries),
    referenceAdhesive: fields.referenceAdhesive ?? '',
    windowDays: plain(fields.windowDays),
    startOn: fields.startOn ?? '',
    overlapLengthMm: keptText(fields.overlapLengthMm, length),
    overlapWidthMm: keptText(fields.overlapWidthMm, length),
    areaMm2: keptText(fields.areaMm2, area),
    pieceLengthMm: keptText(fields.pieceLengthMm, length),
    pieceWidthMm: keptText(fields.pieceWidthMm, length),
    pieceThicknessMm: keptText(fields.pieceThicknessMm, length),
    boards: fields.boards,
    cvPercent: plain(fields.cvPercent),
    confidence: keptText(fields.confidence, inPercent),
    power: keptText(fields.power, inPercent),
    adhesiveGPerBlock: plain(fields.adhesiveGPerBlock),
  }
}

/** What is kept of a study that no field shows. */
export type KeptOfStudy = Pick<StudyFields, 'seed' | 'demo'>

/**
 * The fields that a form says, or one clear sentence for each that cannot be. `preview`: the study as far as it can be drawn,
 * whether or not it has a title yet. `texts`: as they are read.
 */
export function readStudy(
  texts: StudyTexts,
  quantities: Quantities,
  kept: KeptOfStudy,
): { fields: StudyFields | null; preview: StudyFields | null; errors: StudyErrors } {
  const { candidate, errors } = candidateOf(texts, quantities, kept)
  const parsed = studyFields.safeParse({ ...candidate, title: candidate.title.trim() === '' ? '–' : candidate.title })
  if (!parsed.success)
    for (const issue of parsed.error.issues) {
      const key = keyOfIssue(issue.path[0])
      errors[key] ??= wordsOfIssue(key)
    }
  const tooLarge = parsed.success ? planSizeFault(parsed.data) : null
  if (tooLarge !== null) errors[tooLarge.kind === 'cells' ? 'ages' : 'blocksPerCell'] ??= planSizeWords(tooLarge)
  const preview = parsed.success && tooLarge === null ? parsed.data : null
  if (texts.title.trim() === '') errors.title = 'Give the study a title.'
  return { fields: Object.keys(errors).length === 0 ? preview : null, preview, errors }
}

function candidateOf(texts: StudyTexts, { length, area }: Quantities, kept: KeptOfStudy) {
  const errors: StudyErrors = {}
  const number = (key: keyof StudyTexts, unit: FieldUnit, what: string): number | null => {
    const read = readQuantity(String(texts[key]), unit, `${what} ${inUnit(unit.unit)}`.trim())
    if ('error' in read) errors[key] = read.error
    return 'error' in read ? null : read.stored
  }
  const ages = readAges(texts.ages)
  if (ages.error !== null) errors.ages = ages.error
  if (texts.adhesives.length === 0) errors.adhesives = 'Name at least one adhesive.'
  const candidate = {
    ...kept,
    title: texts.title,
    question: texts.question,
    adhesives: texts.adhesives,
    jointTypes: texts.jointTypes.length === 0 ? [''] : texts.jointTypes,
    exposures: texts.exposures.length === 0 ? [''] : texts.exposures,
    gapsMm: texts.gapsMm.length === 0 ? [0] : texts.gapsMm,
    agesMonths: ages.agesMonths,
    leftOut: texts.leftOut,
    blocksPerCell: number('blocksPerCell', noUnit, 'the number of blocks') ?? Number.NaN,
    sparesPerSeries: number('sparesPerSeries', noUnit, 'the number of spares') ?? 0,
    referenceAdhesive: texts.referenceAdhesive === '' ? null : texts.referenceAdhesive,
    windowDays: number('windowDays', noUnit, 'the number of days') ?? 0,
    startOn: texts.startOn === '' ? null : texts.startOn,
    overlapLengthMm: number('overlapLengthMm', length, 'the length'),
    overlapWidthMm: number('overlapWidthMm', length, 'the width'),
    areaMm2: number('areaMm2', area, 'the area'),
    pieceLengthMm: number('pieceLengthMm', length, 'the length'),
    pieceWidthMm: number('pieceWidthMm', length, 'the width'),
    pieceThicknessMm: number('pieceThicknessMm', length, 'the thickness'),
    wood: texts.wood,
    boards: texts.boards,
    cvPercent: number('cvPercent', noUnit, 'the spread in percent'),
    confidence: number('confidence', inPercent, 'the confidence') ?? 0.95,
    power: number('power', inPercent, 'the power') ?? 0.8,
    adhesiveGPerBlock: number('adhesiveGPerBlock', noUnit, 'the grams'),
  }
  return { candidate, errors }
}

/** The field that shows what an issue of the contract is about. */
function keyOfIssue(key: PropertyKey | undefined): keyof StudyTexts {
  return key === 'agesMonths' ? 'ages' : (key as keyof StudyTexts)
}

/** Said of something that is entered a second time. */
export const isListed = (name: string) => `${name} is in the list already.`

const wholeWanted = (least: number, most: number) => `Write a whole number from ${least} to ${most}.`
const shareWanted = (least: number, usual: number) => `Write a percentage between ${least} and 100, as ${usual}.`

/** What is asked of a field whose number or text is out of bounds. */
function wordsOfIssue(key: keyof StudyTexts): string {
  switch (key) {
    case 'blocksPerCell':
      return wholeWanted(1, 1000)
    case 'sparesPerSeries':
      return wholeWanted(0, 1000)
    case 'windowDays':
      return wholeWanted(0, 365)
    case 'startOn':
      return askForDay
    case 'confidence':
      return shareWanted(50, 95)
    case 'power':
      return shareWanted(5, 80)
    case 'cvPercent':
      return 'Write a spread above 0 % and up to 1000 %.'
    case 'adhesives':
    case 'jointTypes':
    case 'exposures':
    case 'gapsMm':
      return 'Name each level once, 200 at most.'
    case 'boards':
      return 'Name each board once, 1000 at most.'
    case 'ages':
      return 'Up to 200 ages are taken.'
    case 'leftOut':
      return 'Too many cells are left out.'
    case 'title':
    case 'question':
    case 'wood':
    case 'referenceAdhesive':
      return 'This is too long.'
    default:
      return 'Write a number above 0.'
  }
}

/** What is left out after a cell, or with `ageMonths` null a whole series, was left out or taken back in. */
export function toggleLeftOut(leftOut: StudyFields['leftOut'], cell: StudyCell): StudyFields['leftOut'] {
  const series = seriesKey(cell)
  if (cell.ageMonths === null) {
    const others = leftOut.filter((one) => seriesKey(one) !== series)
    return leftOut.some((one) => one.ageMonths === null && seriesKey(one) === series) ? others : [...others, cell]
  }
  const key = cellKey(cell)
  const others = leftOut.filter((one) => cellKey(one) !== key)
  return others.length < leftOut.length ? others : [...others, cell]
}

/** Whether a series is left out whole. */
export function isSeriesLeftOut(leftOut: StudyFields['leftOut'], series: Series): boolean {
  const key = seriesKey(series)
  return leftOut.some((one) => one.ageMonths === null && seriesKey(one) === key)
}
