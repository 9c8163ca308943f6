import { Dialog } from '../../widgets/dialogs/Dialog.tsx'
import './cautions.css'

/** What can hurt at the bench. Shown before the first use, and whenever asked for. */
export function CautionsDialog({ first, onClose }: { first: boolean; onClose(): void }) {
  return (
    <Dialog title="Before you load a specimen" onClose={onClose}>
      <ul className="cautions">
        <li>
          <strong>Parts can fly when a joint lets go.</strong> Close the guard, wear eye protection, keep hands clear of
          the press.
        </li>
        <li>
          <strong>Never exceed the rated load</strong> of cell, press or frame, whichever is least. Enter it, and the
          program warns above 90 %.
        </li>
        <li>
          <strong>Adhesives and solvents:</strong> follow the maker’s safety sheet.
        </li>
        <li>
          <strong>Results compare adhesives on this bench.</strong> They are no design values and no certification.
          Structural use is for the applicable code and a licensed professional.
        </li>
      </ul>
      <div className="dialog-buttons">
        <button type="button" className="button button-primary" onClick={onClose}>
          {first ? 'I have read this' : 'Close'}
        </button>
      </div>
    </Dialog>
  )
}
