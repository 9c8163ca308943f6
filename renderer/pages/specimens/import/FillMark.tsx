import { colourName } from '#words/specimens/import/colourWords.ts'

/** The colour of a cell: a patch of it and what it is called. */
export function FillMark({ fill }: { fill: string | null }) {
  const isColour = fill !== null && /^[0-9A-F]{6}$/.test(fill)
  return (
    <span className="fill-mark">
      <span
        className="fill-patch"
        data-none={isColour ? undefined : ''}
        aria-hidden="true"
        style={isColour ? { background: `#${fill}` } : undefined}
      />
      {colourName(fill)}
    </span>
  )
}
