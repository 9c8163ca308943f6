import { useRef } from 'react'
import { tableKinds } from '#words/specimens/import/sheetWords.ts'
import { useFileDrop } from '../../../widgets/forms/useFileDrop.ts'

/** Where a file of past results is chosen or dropped. */
export function FileChoice({
  name,
  isBusy,
  onFile,
}: {
  name: string | null
  /** Something is being done with a file: another one waits until that is done or stopped. */
  isBusy: boolean
  onFile(file: File): void
}) {
  const input = useRef<HTMLInputElement>(null)
  const take = (files: FileList | null) => {
    const file = files?.[0]
    if (file !== undefined) onFile(file)
  }
  const drop = useFileDrop(take)
  return (
    <section aria-label="File of past results" className="import-drop" {...drop}>
      <button
        type="button"
        className={name === null ? 'button button-primary' : 'button'}
        aria-disabled={isBusy}
        onClick={() => isBusy || input.current?.click()}
      >
        {name === null ? 'Choose a file' : 'Choose another file'}
      </button>
      <p className="quiet">{tableKinds}</p>
      <input
        ref={input}
        type="file"
        hidden
        aria-label="File"
        accept=".csv,.tsv,.txt,.xlsx"
        onChange={(event) => {
          take(event.currentTarget.files)
          event.currentTarget.value = ''
        }}
      />
    </section>
  )
}
