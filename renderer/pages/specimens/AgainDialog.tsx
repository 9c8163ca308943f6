import type { BreakSummary } from '#contract/breaks/break.ts'
import type { SpecimenSummary } from '#contract/specimens/specimenRecord.ts'
import { againQuestion } from '#words/specimens/resultsWords.ts'
import { useQuantities } from '../../host/useQuantities.ts'
import { Dialog } from '../../widgets/dialogs/Dialog.tsx'

/** Asks before a specimen that broke is put on the bench again. */
export function AgainDialog({
  current,
  last,
  onAgain,
  onClose,
}: {
  current: SpecimenSummary
  /** Its newest break. */
  last: BreakSummary | null
  onAgain(): void
  onClose(): void
}) {
  const { force } = useQuantities()
  return (
    <Dialog title={`Break ${current.fields.number} again?`} onClose={onClose}>
      <p>{againQuestion(current, last, (peakN) => force.text(peakN))}</p>
      <div className="dialog-buttons">
        <button type="button" className="button" data-first-focus="" onClick={onClose}>
          Leave it
        </button>
        <button type="button" className="button button-primary" onClick={onAgain}>
          Put it on the bench again
        </button>
      </div>
    </Dialog>
  )
}
