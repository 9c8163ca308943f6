import { useLayoutEffect, useRef, useState } from 'react'
import { writeFixed } from '#words/units/numbers.ts'
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

type Size = { width: number; em: number }

/** The figure is drawn in the pixels of its place, so that its text is as large as all other; on paper it shrinks as a whole. */
function useSize() {
  const svg = useRef<SVGSVGElement>(null)
  const [size, setSize] = useState<Size>({ width: 560, em: 12.5 })
  useLayoutEffect(() => {
    const element = svg.current
    if (element === null) return
    const measure = () => {
      const em = Number.parseFloat(getComputedStyle(element).fontSize)
      const width = Math.round(element.getBoundingClientRect().width)
      if (width > 0) setSize((before) => (before.width === width && before.em === em ? before : { width, em }))
    }
    measure()
    const observer = new ResizeObserver(measure)
    observer.observe(element)
    return () => observer.disconnect()
  }, [])
  return { svg, ...size }
}

/** Points over a number or in their order, with lines for what they are held against. */
export function PointFigure({
  label,
  points,
  levels,
  xTitle,
  yTitle,
  joined = false,
  heightEm = 18,
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
  /** Height in heights of its text. */
  heightEm?: number
  /** What stands under whole numbers of x instead of the number; null: the numbers. */
  xNames?: readonly string[] | null
}) {
  const { svg, width, em } = useSize()
  const height = heightEm * em
  const left = 4.6 * em
  const right = width - 0.8 * em
  const top = 2.1 * em
  const bottom = height - (xTitle === '' ? 1.8 : 3.1) * em
  const x = xNames === null ? axisOver([0, ...points.map((point) => point.x)]) : namedAxis(xNames.length)
  const y = axisOver([...points.map((point) => point.y), ...levels.map((level) => level.y)])
  const atX = (value: number) => scaled(value, x, left, right)
  const atY = (value: number) => scaled(value, y, bottom, top)
  const longest = Math.max(...(xNames ?? ['000000']).map((name) => name.length), 1)
  const every = Math.max(Math.ceil((x.ticks.length * longest * 0.75 * em) / (right - left)), 1)
  return (
    <svg ref={svg} className="point-figure" viewBox={`0 0 ${width} ${height}`} role="img" aria-label={label}>
      {y.ticks.map((tick) => (
        <g key={tick}>
          <path className="figure-grid" d={`M${left} ${atY(tick)}H${right}`} />
          <text className="figure-text" x={left - 0.6 * em} y={atY(tick)} dy="0.35em" textAnchor="end">
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
            y={bottom + 1.3 * em}
            textAnchor={index === x.ticks.length - 1 && xNames === null ? 'end' : 'middle'}
          >
            {xNames === null ? writeFixed(tick, x.decimals) : xNames[tick]}
          </text>
        ) : null,
      )}
      <text className="figure-text figure-title" x={right} y={height - 0.35 * em} textAnchor="end">
        {xTitle}
      </text>
      <text className="figure-text figure-title" x={0} y={em}>
        {yTitle}
      </text>
      {levels.map((level) => (
        <g key={level.label + level.y}>
          <path className="figure-level" data-kind={level.kind} d={`M${left} ${atY(level.y)}H${right}`} />
          <text
            className="figure-text figure-level-name"
            x={right - 0.25 * em}
            y={atY(level.y) - 0.35 * em}
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
          {point.ringed ? <circle className="figure-ring" cx={atX(point.x)} cy={atY(point.y)} r={0.75 * em} /> : null}
          <path
            className="figure-point"
            data-hollow={point.hollow ? '' : undefined}
            d={shapePath(point.shape, atX(point.x), atY(point.y), em / 12.5)}
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
        <path className="figure-point" data-hollow={hollow ? '' : undefined} d={shapePath(shape, 7, 7, 1)} />
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

function shapePath(shape: PointShape, x: number, y: number, size: number): string {
  const to = (dx: number, dy: number) => `${x + dx * size} ${y + dy * size}`
  if (shape === 'square') return `M${to(-4, -4)}L${to(4, -4)}L${to(4, 4)}L${to(-4, 4)}Z`
  if (shape === 'triangle') return `M${to(0, -5)}L${to(5, 4)}L${to(-5, 4)}Z`
  if (shape === 'diamond') return `M${to(0, -5.5)}L${to(5.5, 0)}L${to(0, 5.5)}L${to(-5.5, 0)}Z`
  const r = 4.4 * size
  return `M${to(-4.4, 0)}a${r} ${r} 0 1 1 ${2 * r} 0a${r} ${r} 0 1 1 ${-2 * r} 0Z`
}
