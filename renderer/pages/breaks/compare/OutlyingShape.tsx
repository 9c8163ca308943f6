/** The shape that marks an outlying curve, as in the plot. */
export function OutlyingShape() {
  return (
    <svg className="outlying-shape" viewBox="0 0 12 12" aria-hidden="true">
      <path d="M6 1.5 11 10.5H1Z" />
    </svg>
  )
}
