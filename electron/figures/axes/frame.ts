import type { FigureSize } from '../drawing/figure.ts'
import type { Mark } from '../drawing/mark.ts'
import { textWidth, wrappedText } from '../drawing/textWidth.ts'
import { type Axis, placesOn } from './axis.ts'

/** The area in which values are drawn, in pixels from the top left of the figure, and where values lie in it. */
export type Frame = {
  left: number
  right: number
  top: number
  bottom: number
  heightPx: number
  atX(value: number): number
  atY(value: number): number
}

export type FrameParts = {
  x: Axis
  y: Axis
  xTitle: string
  yTitle: string
  /** Height of the whole figure without what stands below its axes, in heights of its text. */
  heightEm: number
}

/** From one line of text to the next, in heights of the text. */
export const lineEm = 1.3

/** The frame of a figure, its margins as wide as the words around it need, and the marks of its axes. */
export function framed({ x, y, xTitle, yTitle, heightEm }: FrameParts, size: FigureSize): [Frame, Mark[]] {
  const { widthPx, emPx: em } = size
  const titleAbove = yTitle === '' ? [] : wrappedText(yTitle, widthPx, em)
  const titleBelow = xTitle === '' ? [] : wrappedText(xTitle, widthPx, em)
  const widestY = Math.max(...y.ticks.map(({ label }) => textWidth(label, em)), 0)
  // Values of two figures, one above the other, come to stand above each other
  const firstX = textWidth(x.ticks[0]?.label ?? '', em)
  const left = y.ticks.length === 0 ? Math.max(em, firstX / 2) : Math.max(4.6 * em, widestY + em)
  const lastX = textWidth(x.ticks.at(-1)?.label ?? '', em)
  // The last value may be named under the very edge of the plot
  const beyond = x.ticks.length === 0 ? 0 : lastX / 2 - (widthPx - left) * (1 - shareOf(x, x.ticks.at(-1)!.value))
  const right = widthPx - Math.max(em, Math.min(beyond + 0.2 * em, widthPx / 4))
  const top = (0.8 + lineEm * titleAbove.length) * em
  const heightPx = heightEm * em + (Math.max(titleAbove.length, 1) - 1) * lineEm * em
  const bottom = heightPx - (1.8 + lineEm * titleBelow.length) * em
  const frame = { left, right, top, bottom, heightPx, atX: placesOn(x, left, right), atY: placesOn(y, bottom, top) }
  const marks: Mark[] = [
    ...valuesBeside(y, frame, em),
    ...valuesBelow(x, frame, em),
    ...titleAbove.map(
      (text, line): Mark => ({
        ...{ kind: 'text', ink: 'title', x: 0, y: (1 + lineEm * line) * em, text, anchor: 'start' },
      }),
    ),
    ...titleBelow.map(
      (text, line): Mark => ({
        ...{ kind: 'text', ink: 'title', x: right, text, anchor: 'end' },
        y: heightPx - (0.35 + lineEm * (titleBelow.length - 1 - line)) * em,
      }),
    ),
  ]
  return [frame, marks]
}

/** How far along an axis a value lies, 0 to 1. */
function shareOf({ from, to }: Axis, value: number): number {
  return (value - from) / (to - from)
}

function valuesBeside(y: Axis, { left, right, atY }: Frame, em: number): Mark[] {
  return y.ticks.flatMap(({ value, label }): Mark[] => [
    { kind: 'rule', ink: 'grid', from: { x: left, y: atY(value) }, to: { x: right, y: atY(value) } },
    { kind: 'text', ink: 'tick', x: left - 0.6 * em, y: atY(value) + 0.35 * em, text: label, anchor: 'end' },
  ])
}

function valuesBelow(x: Axis, { bottom, atX }: Frame, em: number): Mark[] {
  const every = strideOf(
    x.ticks.map(({ value, label }) => ({ x: atX(value), width: textWidth(label, em) })),
    0.6 * em,
  )
  return x.ticks.flatMap(({ value, label }, index): Mark[] => {
    if (index % every !== 0) return []
    const at = atX(value)
    return [
      { kind: 'rule', ink: 'axis', from: { x: at, y: bottom }, to: { x: at, y: bottom + 0.3 * em } },
      { kind: 'text', ink: 'tick', x: at, y: bottom + 1.4 * em, text: label, anchor: 'middle' },
    ]
  })
}

/** Every how many labels are written so that no two come closer than `gap` pixels; each stands about its x. */
export function strideOf(labels: readonly { x: number; width: number }[], gap: number): number {
  for (let every = 1; every < labels.length; every++) {
    const written = labels.filter((_, index) => index % every === 0)
    const clear = written.every(({ x, width }, index) => {
      const next = written[index + 1]
      return next === undefined || next.x - next.width / 2 - (x + width / 2) >= gap
    })
    if (clear) return every
  }
  return Math.max(labels.length, 1)
}
