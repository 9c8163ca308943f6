import type { CheckVerdict } from '#contract/calibration/checkWeight.ts'

const paths: Record<CheckVerdict['standing'], string> = {
  'in-control': 'M3 10.5l5 5L17 5',
  'too-few': 'M3 10.5l5 5L17 5',
  watch: 'M10 2 19 18H1ZM10 8v5M10 15.2v.6',
  outside: 'M6 2h8l4 4v8l-4 4H6l-4-4V6ZM6.5 6.5l7 7M13.5 6.5l-7 7',
}

/** The verdict as a shape: a tick, a triangle, a stop sign. */
export function VerdictShape({ standing }: { standing: CheckVerdict['standing'] }) {
  return (
    <svg className="verdict-shape" viewBox="0 0 20 20" aria-hidden="true">
      <path d={paths[standing]} />
    </svg>
  )
}
