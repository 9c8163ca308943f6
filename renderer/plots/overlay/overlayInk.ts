import { readHexColour } from '../spanPainter.ts'
import type { OverlayInk } from './overlayPicture.ts'

/** The colours of many curves in the theme in force, for a screen of so many device pixels to a pixel of the page. */
export function readOverlayInk(element: Element, ratio: number): OverlayInk {
  const style = getComputedStyle(element)
  const read = (name: string) => readHexColour(style.getPropertyValue(name).trim())
  return {
    plain: read('--edge'),
    outlying: read('--warning'),
    setAside: read('--ink-quiet'),
    median: read('--ink'),
    band: read('--accent'),
    emphasis: read('--accent'),
    ground: read('--paper'),
    ratio,
  }
}
