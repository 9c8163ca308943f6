// Held by tests/browser/findings/findingsPage.spec.ts.

/**
 * A figure's SVG text as a PNG, every pixel of the text `scale` pixels wide. Painted from the few forms that figures are made of,
 * for an image made of the text would need the page to admit images from elsewhere. Rejects where there is no memory for it.
 */
export async function pngOfSvg(svg: string, scale: number): Promise<Uint8Array<ArrayBuffer>> {
  const root = new DOMParser().parseFromString(svg, 'image/svg+xml').documentElement
  const canvas = document.createElement('canvas')
  canvas.width = Math.ceil(numberOf(root, 'width') * scale)
  canvas.height = Math.ceil(numberOf(root, 'height') * scale)
  const context = canvas.getContext('2d')
  if (context === null) throw new TypeError('pngOfSvg requires a canvas')
  context.scale(scale, scale)
  const typeface = { family: root.getAttribute('font-family') ?? 'sans-serif', sizePx: numberOf(root, 'font-size') }
  for (const child of root.children) paint(context, child, typeface)
  const blob = await new Promise<Blob | null>((resolve) => canvas.toBlob(resolve, 'image/png'))
  if (blob === null) throw new RangeError('pngOfSvg requires a figure that a canvas can hold')
  return new Uint8Array(await blob.arrayBuffer())
}

type Typeface = { family: string; sizePx: number }

const numberOf = (element: Element, name: string, otherwise = 0) => Number(element.getAttribute(name) ?? otherwise)

function paint(context: CanvasRenderingContext2D, element: Element, typeface: Typeface): void {
  if (element.localName === 'g') {
    const [, x, y] = /translate\((\S+) (\S+)\)/.exec(element.getAttribute('transform') ?? '') ?? [null, 0, 0]
    context.save()
    context.translate(Number(x), Number(y))
    for (const child of element.children) paint(context, child, typeface)
    context.restore()
  } else if (element.localName === 'text') paintText(context, element, typeface)
  else {
    const outline = outlineOf(element)
    if (outline === null) return
    const { fill, stroke } = pens(context, element)
    if (fill) {
      context.globalAlpha = numberOf(element, 'fill-opacity', 1)
      context.fill(outline)
      context.globalAlpha = 1
    }
    if (stroke) context.stroke(outline)
  }
}

function outlineOf(element: Element): Path2D | null {
  const at = (name: string) => numberOf(element, name)
  const outline = new Path2D(element.getAttribute('d') ?? '')
  if (element.localName === 'path') return outline
  if (element.localName === 'rect') outline.rect(at('x'), at('y'), at('width'), at('height'))
  else if (element.localName === 'circle') outline.arc(at('cx'), at('cy'), at('r'), 0, 2 * Math.PI)
  else return null
  return outline
}

/** Readies colours, width and dashes; says which of the two are to be drawn. A form without a colour is filled black, as SVG has it. */
function pens(context: CanvasRenderingContext2D, element: Element): { fill: boolean; stroke: boolean } {
  const fill = element.getAttribute('fill') ?? 'black'
  const stroke = element.getAttribute('stroke') ?? 'none'
  context.fillStyle = fill === 'none' ? 'transparent' : fill
  context.strokeStyle = stroke === 'none' ? 'transparent' : stroke
  context.lineWidth = numberOf(element, 'stroke-width', 1)
  context.lineJoin = element.getAttribute('stroke-linejoin') === 'round' ? 'round' : 'miter'
  context.setLineDash((element.getAttribute('stroke-dasharray') ?? '').split(/[ ,]+/).filter(Boolean).map(Number))
  return { fill: fill !== 'none', stroke: stroke !== 'none' }
}

function paintText(context: CanvasRenderingContext2D, element: Element, { family, sizePx }: Typeface): void {
  const anchor = element.getAttribute('text-anchor')
  context.textAlign = anchor === 'middle' ? 'center' : anchor === 'end' ? 'right' : 'left'
  context.font = `${element.getAttribute('font-weight') ?? 400} ${sizePx}px ${family}`
  const { stroke } = pens(context, element)
  const place = [element.textContent ?? '', numberOf(element, 'x'), numberOf(element, 'y')] as const
  // The ground around each letter lies under it
  if (stroke) context.strokeText(...place)
  context.fillText(...place)
}
