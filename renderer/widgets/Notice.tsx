import type { ReactNode } from 'react'
import type { TroubleMessage } from '#contract/errors.ts'

/** What went wrong and what to do, said at once to a screen reader. */
export function Notice({
  trouble,
  onDismiss,
  children,
}: {
  trouble: TroubleMessage | null
  onDismiss?: () => void
  children?: ReactNode
}) {
  if (trouble === null) return null
  return (
    <div className="notice" role="alert">
      <svg className="notice-shape" viewBox="0 0 20 20" aria-hidden="true">
        <path d="M10 1.5 19 18H1Z" />
        <path d="M10 7.5v5M10 14.4v1.4" className="notice-mark" />
      </svg>
      <div className="notice-words">
        <p className="notice-message">{trouble.message}</p>
        {trouble.hint === '' ? null : <p className="notice-hint">{trouble.hint}</p>}
        {children}
      </div>
      {onDismiss === undefined ? null : (
        <button type="button" className="button button-quiet" onClick={onDismiss}>
          Dismiss
        </button>
      )}
    </div>
  )
}
