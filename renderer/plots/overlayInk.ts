import type { OverlayInk } from './overlayPicture.ts'
import { type PlotColours, readPlotColours } from './plotColours.ts'
import { readHexColour } from './spanPainter.ts'

export type OverlayColours = PlotColours & { ink: string; band: string; pixels: Omit<OverlayInk, 'width' | 'dash'> }

/** The colours of many curves in the theme in force. */
export function readOverlayColours(element: Element): OverlayColours {
  const style = getComputedStyle(element)
  const read = (name: string) => readHexColour(style.getPropertyValue(name).trim())
  return {
    ...readPlotColours(element),
    band: style.getPropertyValue('--accent-wash').trim(),
    pixels: { plain: read('--edge'), outlying: read('--warning'), setAside: read('--ink-quiet') },
  }
}

/** Lines so many device pixels to a pixel of the page wide. */
export function overlayInk({ pixels }: OverlayColours, ratio: number): OverlayInk {
  return { ...pixels, width: 1.3 * ratio, dash: { on: 7 * ratio, off: 5 * ratio } }
}
