import './steadyBar.css'

/** How far a reading that must stand still has come, as a share. */
export function SteadyBar({ label, share }: { label: string; share: number }) {
  return <progress className="steady-bar" aria-label={label} max={1} value={share} />
}
