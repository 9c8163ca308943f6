import { type DragEvent, useRef, useState } from 'react'
import { tableKinds } from '#words/specimens/import/sheetWords.ts'

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
  const [over, setOver] = useState(false)
  const take = (files: FileList | null) => {
    const file = files?.[0]
    if (file !== undefined) onFile(file)
  }
  function onDrag(event: DragEvent, isOver: boolean): void {
    if (!event.dataTransfer.types.includes('Files')) return
    event.preventDefault()
    setOver(isOver)
  }
  return (
    <section
      aria-label="File of past results"
      className="import-drop"
      data-over={over ? '' : undefined}
      onDragOver={(event) => onDrag(event, true)}
      onDragLeave={(event) => onDrag(event, false)}
      onDrop={(event) => {
        onDrag(event, false)
        take(event.dataTransfer.files)
      }}
    >
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
