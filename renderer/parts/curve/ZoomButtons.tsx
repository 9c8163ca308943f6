/** Zooming by mouse what the keys zoom too. `onKey` hears the plot's own keys. */
export function ZoomButtons({
  onKey,
  onAll,
  isAll = false,
}: {
  onKey(name: '+' | '-'): void
  onAll(): void
  /** All is shown already. */
  isAll?: boolean
}) {
  return (
    <>
      <button type="button" className="button button-small" aria-label="Zoom in" onClick={() => onKey('+')}>
        +
      </button>
      <button type="button" className="button button-small" aria-label="Zoom out" onClick={() => onKey('-')}>
        −
      </button>
      <button type="button" className="button button-small" aria-disabled={isAll} onClick={onAll}>
        All
      </button>
    </>
  )
}
