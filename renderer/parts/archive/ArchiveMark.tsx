import { useState } from 'react'
import { archiveName } from '#words/keeping/archiveWords.ts'
import { demoArchiveWords, simulatedMark } from '#words/keeping/demoWords.ts'
import { useHost, useStore } from '../../host/hostContext.ts'
import { ArchivesDialog } from './ArchivesDialog.tsx'
import './archiveMark.css'

/** Always in sight: which archive is open, and of the demo that nothing in it is real. It leads to the other archives. */
export function ArchiveMark() {
  const info = useStore(useHost().info)
  const [choosing, setChoosing] = useState(false)
  if (info === null) return null
  const { path } = info.archive
  const title = info.demo ? `${path}\n${demoArchiveWords}` : path
  const name = (
    <span className="archive-mark-name">
      {archiveName(path, info.demo)}
      {info.demo ? <strong>, {simulatedMark}</strong> : null}
    </span>
  )
  if (!info.capabilities.includes('switch-archive'))
    return (
      <p className="archive-mark" title={title}>
        {name}
      </p>
    )
  return (
    <>
      <button
        type="button"
        className="archive-mark archive-mark-button"
        title={title}
        aria-haspopup="dialog"
        onClick={() => setChoosing(true)}
      >
        <span className="visually-hidden">Archives. Open now: </span>
        {name}
      </button>
      {choosing ? <ArchivesDialog onClose={() => setChoosing(false)} /> : null}
    </>
  )
}
