import { type Shortcut, shortcuts } from '../routes/shortcuts.ts'
import { Dialog } from '../widgets/dialogs/Dialog.tsx'
import { Keys } from '../widgets/Keys.tsx'

const groups: readonly { where: Shortcut['where']; title: string }[] = [
  { where: 'bench', title: 'On the bench' },
  { where: 'anywhere', title: 'Anywhere' },
  { where: 'lists', title: 'In lists' },
  { where: 'calibration', title: 'While calibrating' },
  { where: 'curve', title: 'On a recorded curve' },
]

/** Every key that does something. */
export function HelpDialog({ onClose, onCautions }: { onClose(): void; onCautions(): void }) {
  return (
    <Dialog title="Keys" onClose={onClose} width="widest">
      <div className="help-groups">
        {groups.map((group) => (
          <section key={group.where} className={`help-group help-group-${group.where}`}>
            <h2>{group.title}</h2>
            <dl>
              {shortcuts
                .filter((shortcut) => shortcut.where === group.where)
                .map((shortcut) => (
                  <div key={shortcut.key + shortcut.does}>
                    <dt>
                      <span className="visually-hidden">{shortcut.key}</span>
                      <Keys keys={shortcut.key} />
                    </dt>
                    <dd>{shortcut.does}</dd>
                  </div>
                ))}
            </dl>
          </section>
        ))}
      </div>
      <div className="dialog-buttons">
        <button type="button" className="button" onClick={onCautions}>
          Cautions
        </button>
        <button type="button" className="button button-primary" data-first-focus="" onClick={onClose}>
          Close
        </button>
      </div>
    </Dialog>
  )
}
