import { useEffect, useMemo } from 'react'
import { svgText } from '#figures/drawing/svgText.ts'
import { type OverviewDrawing, overviewSheetSize } from '#figures/findings/overview/overviewDrawing.ts'

/** The figure on a sheet of its own, which only the printer sees: printed as soon as it is there, then forgotten. */
export function PrintedOverview({
  title,
  draw,
  onPrinted,
}: {
  title: string
  draw: OverviewDrawing['draw']
  onPrinted(): void
}) {
  const drawn = useMemo(() => ({ __html: svgText(draw(overviewSheetSize, overviewSheetSize.heightPx)) }), [draw])
  useEffect(() => {
    const forget = adoptSheet()
    print()
    forget()
    onPrinted()
  }, [onPrinted])
  return (
    <div className="overview-print">
      <p>{title}</p>
      <div className="figure-place" dangerouslySetInnerHTML={drawn} />
    </div>
  )
}

/** Tells the browser on what paper it is printed; the returned function forgets it. */
function adoptSheet(): () => void {
  const style = new CSSStyleSheet()
  style.replaceSync('@page { size: A3 landscape; margin: 10mm }')
  document.adoptedStyleSheets = [...document.adoptedStyleSheets, style]
  return () => {
    document.adoptedStyleSheets = document.adoptedStyleSheets.filter((one) => one !== style)
  }
}
