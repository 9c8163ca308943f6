import { writeFixed } from '../widgets/quantities.ts'
import { type AxisSpan, axisOver } from './figureAxis.ts'
import './pointFigure.css'

/** Shapes tell the runs apart, so that colour is never the only sign. */
export const pointShapes = ['circle', 'square', 'triangle', 'diamond'] as const
export type PointShape = (typeof pointShapes)[number]

export type FigurePoint = {
  x: number
  y: number
  shape: PointShape
  /** Drawn as an outline only. */
  hollow?: boolean
  /** Ringed, as the one that calls for attention. */
  ringed?: boolean
  /** What is said when it is pointed at. */
  title: string
}

export type FigureLevel = { y: number; label: string; kind: 'zero' | 'limit' | 'centre' }

/** The drawing's own units: it is scaled to its place, text and all. */
const width = 560
const margin = { left: 56, right: 12, top: 14, bottom: 34 }

/** Points over a number or in their order, with lines for what they are held against. */
export function PointFigure({
  label,
  points,
  levels,
  xTitle,
  yTitle,
  joined = false,
  height = 250,
  xNames = null,
}: {
  /** How the figure is named when it is read out. */
  label: string
  points: readonly FigurePoint[]
  levels: readonly FigureLevel[]
  xTitle: string
  yTitle: string
  /** Joins the points in their order. */
  joined?: boolean
  height?: number
  /** What stands under whole numbers of x instead of the number; null: the numbers. */
  xNames?: readonly string[] | null
}) {
  const x = xNames === null ? axisOver([0, ...points.map((point) => point.x)]) : namedAxis(xNames.length)
  const y = axisOver([...points.map((point) => point.y), ...levels.map((level) => level.y)])
  const atX = (value: number) => scaled(value, x, margin.left, width - margin.right)
  const atY = (value: number) => scaled(value, y, height - margin.bottom, margin.top)
  const every = xNames === null ? 1 : Math.ceil(xNames.length / 7)
  return (
    <svg className="point-figure" viewBox={`0 0 ${width} ${height}`} role="img" aria-label={label}>
      {y.ticks.map((tick) => (
        <g key={tick}>
          <path className="figure-grid" d={`M${margin.left} ${atY(tick)}H${width - margin.right}`} />
          <text className="figure-text" x={margin.left - 7} y={atY(tick)} dy="0.35em" textAnchor="end">
            {writeFixed(tick, y.decimals)}
          </text>
        </g>
      ))}
      {x.ticks.map((tick, index) =>
        index % every === 0 ? (
          <text
            key={tick}
            className="figure-text"
            x={atX(tick)}
            y={height - margin.bottom + 15}
            textAnchor={index === x.ticks.length - 1 && xNames === null ? 'end' : 'middle'}
          >
            {xNames === null ? writeFixed(tick, x.decimals) : xNames[tick]}
          </text>
        ) : null,
      )}
      <text className="figure-text figure-title" x={width - margin.right} y={height - 4} textAnchor="end">
        {xTitle}
      </text>
      <text className="figure-text figure-title" x={2} y={9}>
        {yTitle}
      </text>
      {levels.map((level) => (
        <g key={level.label + level.y}>
          <path
            className="figure-level"
            data-kind={level.kind}
            d={`M${margin.left} ${atY(level.y)}H${width - margin.right}`}
          />
          <text
            className="figure-text figure-level-name"
            x={width - margin.right - 3}
            y={atY(level.y) - 4}
            textAnchor="end"
          >
            {level.label}
          </text>
        </g>
      ))}
      {joined && points.length > 1 ? (
        <path
          className="figure-line"
          d={points.map((point, index) => `${index === 0 ? 'M' : 'L'}${atX(point.x)} ${atY(point.y)}`).join('')}
        />
      ) : null}
      {points.map((point) => (
        <g key={point.title}>
          <title>{point.title}</title>
          {point.ringed ? <circle className="figure-ring" cx={atX(point.x)} cy={atY(point.y)} r={9} /> : null}
          <path
            className="figure-point"
            data-hollow={point.hollow ? '' : undefined}
            d={shapePath(point.shape, atX(point.x), atY(point.y))}
          />
        </g>
      ))}
    </svg>
  )
}

/** A shape beside its name, as under a figure. */
export function ShapeKey({
  shape,
  hollow = false,
  children,
}: {
  shape: PointShape
  hollow?: boolean
  children: string
}) {
  return (
    <span className="shape-key">
      <svg viewBox="0 0 14 14" aria-hidden="true">
        <path className="figure-point" data-hollow={hollow ? '' : undefined} d={shapePath(shape, 7, 7)} />
      </svg>
      {children}
    </span>
  )
}

function namedAxis(count: number): AxisSpan {
  return { from: -0.5, to: Math.max(count, 1) - 0.5, ticks: Array.from({ length: count }, (_, i) => i), decimals: 0 }
}

function scaled(value: number, span: AxisSpan, from: number, to: number): number {
  return from + ((value - span.from) / (span.to - span.from)) * (to - from)
}

function shapePath(shape: PointShape, x: number, y: number): string {
  if (shape === 'square') return `M${x - 4} ${y - 4}h8v8h-8Z`
  if (shape === 'triangle') return `M${x} ${y - 5}l5 9h-10Z`
  if (shape === 'diamond') return `M${x} ${y - 5.5}l5.5 5.5-5.5 5.5-5.5-5.5Z`
  return `M${x - 4.4} ${y}a4.4 4.4 0 1 1 8.8 0a4.4 4.4 0 1 1-8.8 0Z`
}
