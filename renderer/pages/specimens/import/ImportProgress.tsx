import { ofWords } from '#words/units/counts.ts'
import type { Doing, ImportFile } from './useImportFile.ts'

const doingWords: Readonly<Record<Doing, string>> = {
  looking: 'Reading the file',
  trying: 'Trying every row',
  importing: 'Reading the file, then storing its blocks',
}

/** What the program does with the file, how far it is, and a way to stop it. */
export function ImportProgress({ file: { doing, progress, stop } }: { file: ImportFile }) {
  if (doing === null) return null
  return (
    <p className="import-progress" role="status">
      {progress === null ? (
        <progress aria-label={doingWords[doing]} />
      ) : (
        <progress aria-label="Blocks stored" max={progress.total} value={progress.done} />
      )}
      <span>{progress === null ? `${doingWords[doing]} …` : ofWords(progress.done, progress.total)}</span>
      <button type="button" className="button" onClick={stop}>
        Stop
      </button>
    </p>
  )
}
