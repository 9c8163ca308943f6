import type { Verification } from '#contract/calibration/verification.ts'
import { verificationWords } from '#words/calibration/verificationWords.ts'
import { useQuantities } from '../host/useQuantities.ts'
import './verificationWords.css'

/** What the calibration says of this peak: its uncertainty, or by how far it lies outside all that was checked. */
export function VerificationWords({ verification }: { verification: Verification }) {
  const { force } = useQuantities()
  const sure = verification.expandedUncertaintyN !== null
  return (
    <p className="verification-words" data-sure={sure ? '' : undefined}>
      {sure ? null : (
        <svg className="notice-shape" viewBox="0 0 20 20" aria-hidden="true">
          <path d="M10 1.5 19 18H1Z" />
          <path d="M10 7.5v5M10 14.4v1.4" className="notice-mark" />
        </svg>
      )}
      <span>{verificationWords(verification, force)}</span>
    </p>
  )
}
