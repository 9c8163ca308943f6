import { useState } from 'react'
import type { FilePurpose, KnownArchive } from '#contract/keeping/archive.ts'
import { archiveName, knownArchiveWords } from '#words/keeping/archiveWords.ts'
import { useHost, useStore } from '../../host/hostContext.ts'
import { useAction } from '../../host/useAction.ts'
import { useAnswer } from '../../host/useAnswer.ts'
import { Dialog } from '../../widgets/dialogs/Dialog.tsx'
import { Field } from '../../widgets/Field.tsx'
import { Form } from '../../widgets/forms/Form.tsx'
import { Notice } from '../../widgets/Notice.tsx'
import { useArchiveSwitch } from './useArchiveSwitch.ts'
import './archivesDialog.css'

/** The archives that the program knows, and the way to any other: chosen in the system's own dialog, or by its path. */
export function ArchivesDialog({ onClose }: { onClose(): void }) {
  const known = useAnswer('archive.known', {})
  const archive = useArchiveSwitch()
  const canChoose = useStore(useHost().info)?.capabilities.includes('choose-file') ?? false
  const openFile = (path: string, purpose: FilePurpose) =>
    archive.switchTo({ kind: 'file', path, make: purpose === 'make' }, { page: 'bench' })
  return (
    <Dialog title="Archives" onClose={onClose} width="wide">
      <ul className="archive-list">
        {(known.value ?? []).map((one) => (
          <li key={one.path}>
            <ArchiveChoiceButton
              known={one}
              disabled={archive.pending}
              onChoose={() =>
                one.kind === 'demo'
                  ? archive.switchTo({ kind: 'demo' }, { page: 'bench' })
                  : openFile(one.path, one.isThere ? 'open' : 'make')
              }
            />
          </li>
        ))}
      </ul>
      {canChoose ? (
        <ByDialog pending={archive.pending} onFile={openFile} />
      ) : (
        <ByPath pending={archive.pending} onFile={openFile} />
      )}
      <p aria-live="polite" className="quiet">
        {archive.pending ? 'Opening …' : ''}
      </p>
      <Notice trouble={known.error ?? archive.error} onDismiss={archive.dismiss} />
      <div className="dialog-buttons">
        <button type="button" className="button" onClick={onClose}>
          Stay here
        </button>
      </div>
    </Dialog>
  )
}

function ArchiveChoiceButton({
  known,
  disabled,
  onChoose,
}: {
  known: KnownArchive
  disabled: boolean
  onChoose(): void
}) {
  // A file that is gone cannot be opened; the usual ones are made when they are opened first.
  const gone = !known.isThere && !known.isUsual
  return (
    <button
      type="button"
      className="archive-choice"
      aria-current={known.isOpen ? 'true' : undefined}
      aria-disabled={disabled || known.isOpen || gone}
      data-first-focus={known.isOpen || gone ? undefined : ''}
      onClick={onChoose}
    >
      <strong>{archiveName(known.path, known.kind === 'demo')}</strong>
      <span className="archive-choice-words">{knownArchiveWords(known)}</span>
      <span className="archive-choice-path">{known.path}</span>
    </button>
  )
}

/** The system asks for the file. */
function ByDialog({
  pending,
  onFile,
}: {
  pending: boolean
  onFile(path: string, purpose: FilePurpose): Promise<void>
}) {
  const choose = useAction('archive.choose')
  async function ask(purpose: FilePurpose): Promise<void> {
    const path = (await choose.run({ purpose }))?.path ?? null
    if (path !== null) await onFile(path, purpose)
  }
  const busy = pending || choose.pending
  return (
    <div className="archive-other">
      <button type="button" className="button" aria-disabled={busy} onClick={() => void ask('open')}>
        Open another file
      </button>
      <button type="button" className="button" aria-disabled={busy} onClick={() => void ask('make')}>
        Make a new archive
      </button>
      <Notice trouble={choose.error} onDismiss={choose.dismiss} />
    </div>
  )
}

/** A browser shows no paths of this computer to a page, so the path is typed. */
function ByPath({ pending, onFile }: { pending: boolean; onFile(path: string, purpose: FilePurpose): Promise<void> }) {
  const [path, setPath] = useState('')
  const [asked, setAsked] = useState(false)
  const missing = path.trim() === ''
  async function ask(purpose: FilePurpose): Promise<boolean> {
    setAsked(true)
    if (!missing) await onFile(path, purpose)
    return !missing
  }
  return (
    <Form className="archive-path" onSubmit={(by) => ask(by === 'make' ? 'make' : 'open')}>
      <Field
        label="Path of another file"
        maxLength={4096}
        value={path}
        autoComplete="off"
        spellCheck={false}
        onChange={(event) => setPath(event.currentTarget.value)}
        error={asked && missing ? 'Write the path first.' : null}
      />
      <div className="archive-other">
        <button type="submit" className="button" aria-disabled={pending}>
          Open it
        </button>
        <button type="submit" className="button" value="make" aria-disabled={pending}>
          Make it as a new archive
        </button>
      </div>
    </Form>
  )
}
