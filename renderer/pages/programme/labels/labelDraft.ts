import { type LabelChoice, mostLabels } from '#contract/programme/labelProcedures.ts'
import type { LabelSheet } from '#contract/programme/labelSheet.ts'
import { lastRunning } from '#domain/programme/labels/label.ts'
import { type PageSize, sheetOfGrid, sheetOfSize } from '#domain/programme/labels/sheetGeometry.ts'

/** What stands in the fields of the page of labels; lengths as they are typed, in mm. */
export type LabelDraft = {
  of: 'study' | 'numbers' | 'selected'
  studyId: number | null
  first: string
  last: string
  page: PageSize
  by: 'grid' | 'size'
  columns: string
  rows: string
  widthMm: string
  heightMm: string
  leftMm: string
  topMm: string
  gapAcrossMm: string
  gapDownMm: string
  outlined: boolean
}

/** The sheet that is offered first: of a study that was named, of specimens that are selected, or of numbers. */
export function firstSheet(studyId: number | null, selected: number): LabelDraft {
  const of = studyId !== null ? 'study' : selected > 0 ? 'selected' : 'numbers'
  return {
    ...{ of, studyId, first: '', last: '' },
    ...{ page: 'A4', by: 'grid', columns: '5', rows: '13', widthMm: '63.5', heightMm: '38' },
    ...{ leftMm: '', topMm: '', gapAcrossMm: '0', gapDownMm: '0', outlined: true },
  }
}

/** Which labels the fields ask for; null: that cannot be said yet. `selected`: the specimens that are selected in their list. */
export function choiceOf({ of, studyId, first, last }: LabelDraft, selected: readonly number[]): LabelChoice | null {
  if (of === 'selected')
    return selected.length === 0 || selected.length > mostLabels
      ? null
      : { kind: 'specimens', specimenIds: [...selected] }
  if (of === 'study') return studyId === null ? null : { kind: 'study', studyId }
  const [from, to] = [wholeNumber(first), wholeNumber(last)]
  if (from === null || to === null || from < 1 || to < from || to > lastRunning) return null
  return { kind: 'numbers', first: from, last: to }
}

/** The sheet that the fields describe; null: one of them is no number. */
export function sheetOf(draft: LabelDraft): LabelSheet | null {
  if (draft.by === 'grid') {
    const [columns, rows] = [wholeNumber(draft.columns), wholeNumber(draft.rows)]
    if (columns === null || rows === null || columns < 1 || rows < 1 || columns > 100 || rows > 100) return null
    return { ...sheetOfGrid(draft.page, columns, rows), outlined: draft.outlined }
  }
  const [width, height] = [length(draft.widthMm), length(draft.heightMm)]
  const [across, down] = [length(draft.gapAcrossMm), length(draft.gapDownMm)]
  if (!width || !height || across === null || down === null || width > 1000 || height > 1000) return null
  // A gap is a part of its label when their number is worked out
  const fitting = sheetOfSize(draft.page, width + across, height + down)
  const { columns, rows, pageWidthMm, pageHeightMm } = fitting
  const sheet = { ...fitting, labelWidthMm: width, labelHeightMm: height, gapAcrossMm: across, gapDownMm: down }
  const [left, top] = [length(draft.leftMm), length(draft.topMm)]
  return {
    ...sheet,
    leftMm: left ?? Math.max(0, (pageWidthMm - columns * width - (columns - 1) * across) / 2),
    topMm: top ?? Math.max(0, (pageHeightMm - rows * height - (rows - 1) * down) / 2),
    outlined: draft.outlined,
  }
}

function wholeNumber(text: string): number | null {
  return /^\s*\d{1,7}\s*$/.test(text) ? Number(text) : null
}

/** A length in mm, written with a point or a comma; null: none. */
function length(text: string): number | null {
  return /^\s*\d{1,4}(?:[.,]\d{1,4})?\s*$/.test(text) ? Number(text.replace(',', '.')) : null
}
