import { strengthQuestion } from '#words/specimens/plausibleWords.ts'
import { useQuantities } from '../host/useQuantities.ts'

/** Asks about a shear strength that is hardly one; nothing otherwise. */
export function StrengthQuestion({ strengthMPa }: { strengthMPa: number | null }) {
  const question = strengthQuestion(strengthMPa, useQuantities().strength)
  return question === null ? null : (
    <p className="field-question" role="status">
      {question}
    </p>
  )
}
