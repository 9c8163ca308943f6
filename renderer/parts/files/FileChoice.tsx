import { useRef } from 'react'
import { tableKinds } from '#words/specimens/import/sheetWords.ts'
import { useFileDrop } from '../../widgets/forms/useFileDrop.ts'
import './fileChoice.css'

/** Where the file of a table is chosen or dropped. */
export function FileChoice({
  label,
  what,
  name,
  isBusy,
  onFile,
}: {
  label: string
  /** What the table holds: 'A table of past results'. */
  what: string
  /** Of the file that was chosen; null: none yet. */
  name: string | null
  /** Something is being done with a file: another one waits until that is done or stopped. */
  isBusy: boolean
  onFile(file: File): void
}) {
  const input = useRef<HTMLInputElement>(null)
  const take = (files: FileList | null) => {
    const file = files?.[0]
    if (file !== undefined && !isBusy) onFile(file)
  }
  const drop = useFileDrop(take)
  return (
    <section aria-label={label} className="file-choice" {...drop}>
      <button
        type="button"
        className={name === null ? 'button button-primary' : 'button'}
        aria-disabled={isBusy}
        onClick={() => isBusy || input.current?.click()}
      >
        {name === null ? 'Choose a file' : 'Choose another file'}
      </button>
      <p className="quiet">{tableKinds(what)}</p>
      <input
        ref={input}
        type="file"
        hidden
        accept=".csv,.tsv,.txt,.xlsx"
        onChange={(event) => {
          take(event.currentTarget.files)
          event.currentTarget.value = ''
        }}
      />
    </section>
  )
}
