import type { BenchPhase } from '#contract/bench/bench.ts'
import './phaseShape.css'

const paths: Record<BenchPhase, string> = {
  'no-signal': 'M4 4 16 16M16 4 4 16',
  settling: 'M3 7q3.5-4 7 0t7 0M3 13q3.5-4 7 0t7 0',
  waiting: 'M10 3a7 7 0 1 1 0 14a7 7 0 1 1 0-14Z',
  loading: 'M3 16 10 4l7 12Z',
  broke: 'M3 15 9 5l2.2 5.2L13 7v9h4',
  unloaded: 'M3 5l7 11 7-11Z',
}

/** The state of the bench as a shape, so that colour is never its only sign. */
export function PhaseShape({ phase }: { phase: BenchPhase }) {
  return (
    <svg className="phase-shape" data-phase={phase} viewBox="0 0 20 20" aria-hidden="true">
      <path d={paths[phase]} />
    </svg>
  )
}
