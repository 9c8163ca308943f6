import type { ReactNode } from 'react'

/** Something that is on or off, saying which in words beside its shape. */
export function Switch({
  label,
  on,
  onChange,
  onWord = 'on',
  offWord = 'off',
  keys,
}: {
  label: string
  on: boolean
  onChange(on: boolean): void
  onWord?: string
  offWord?: string
  keys?: ReactNode
}) {
  return (
    <button type="button" role="switch" aria-checked={on} className="switch" onClick={() => onChange(!on)}>
      <span className="switch-track" aria-hidden="true">
        <span className="switch-thumb" />
      </span>
      {label === '' ? null : <span className="switch-label">{label}</span>}
      <span className="switch-word">{on ? onWord : offWord}</span>
      {keys}
    </button>
  )
}
