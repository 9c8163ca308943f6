// Held by tests/browser/breaks/woodFromPicture.spec.ts.
import { type DragEvent, useState } from 'react'

/** Lets files be dropped on a part of the page: what that part needs, and nothing else that is dragged is taken. `data-over` says that one is held above it. */
export function useFileDrop(onFiles: (files: FileList) => void) {
  const [over, setOver] = useState(false)
  function onDrag(event: DragEvent, isOver: boolean): void {
    if (!event.dataTransfer.types.includes('Files')) return
    event.preventDefault()
    setOver(isOver)
  }
  return {
    'data-over': over ? '' : undefined,
    onDragOver: (event: DragEvent) => onDrag(event, true),
    onDragLeave: (event: DragEvent) => onDrag(event, false),
    onDrop(event: DragEvent) {
      onDrag(event, false)
      onFiles(event.dataTransfer.files)
    },
  }
}
