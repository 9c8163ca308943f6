import { ageingFigureWords, seriesTitle } from '#words/findings/ageingFigureWords.ts'
import type { Quantity } from '#words/units/quantities.ts'
import { lineEm } from '../axes/frame.ts'
import type { Figure, FigureSize } from '../drawing/figure.ts'
import type { Mark } from '../drawing/mark.ts'
import { wrappedText } from '../drawing/textWidth.ts'
import { type AgeingPicture, ageingFigure, ageingKeysFigure } from './ageingFigure.ts'

const leastPanelEm = 24
const betweenEm = 1.6

/** Several series beside each other, each under its name, on the scale that they share; their signs explained once below. */
export function ageingMultiples(pictures: readonly AgeingPicture[], strength: Quantity, size: FigureSize): Figure {
  const { widthPx, emPx: em } = size
  const between = betweenEm * em
  const most = Math.max(Math.floor((widthPx + between) / (leastPanelEm * em + between)), 1)
  const columns = Math.min(most, Math.max(pictures.length, 1))
  const panelPx = (widthPx - (columns - 1) * between) / columns
  const panels = pictures.map((picture) => ({
    names: wrappedText(picture.name, panelPx, em),
    figure: ageingFigure({ ...picture, withKeys: false }, strength, { widthPx: panelPx, emPx: em }),
  }))
  const marks: Mark[] = []
  const readings: Figure['readings'][number][] = []
  let top = 0
  for (let first = 0; first < panels.length; first += columns) {
    const row = panels.slice(first, first + columns)
    const namesPx = (0.5 + lineEm * Math.max(...row.map(({ names }) => names.length))) * em
    for (const [column, { names, figure }] of row.entries()) {
      const by = { x: column * (panelPx + between), y: top + namesPx }
      for (const [line, text] of names.entries())
        marks.push({
          ...{ kind: 'text', ink: 'heading', x: by.x, y: top + (1 + lineEm * line) * em, text, anchor: 'start' },
        })
      marks.push({ kind: 'moved', by, marks: figure.marks })
      readings.push(...figure.readings.map((one) => ({ ...one, x: one.x + by.x, y: one.y + by.y })))
    }
    top += namesPx + Math.max(...row.map(({ figure }) => figure.heightPx)) + 0.8 * em
  }
  const keys = ageingKeysFigure(pictures, size)
  marks.push({ kind: 'moved', by: { x: 0, y: top }, marks: keys.marks })
  return {
    ...size,
    heightPx: top + keys.heightPx,
    title: seriesTitle(pictures.length),
    description: pictures.map((picture) => ageingFigureWords(picture, strength)).join(' '),
    marks,
    readings,
  }
}
