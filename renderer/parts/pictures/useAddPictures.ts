// Held by tests/browser/breaks/woodFromPicture.spec.ts.
import { useCallback, useEffect, useState } from 'react'
import { type TroubleMessage, troubleFrom } from '#contract/errors.ts'
import { type PictureOwner, refuseLargePicture } from '#contract/specimens/pictureProcedures.ts'
import { othersNotKept } from '#words/specimens/pictureWords.ts'
import { useHost } from '../../host/hostContext.ts'
import { useSigner } from '../decisions/signer.ts'
import { readFile } from '../files/readFile.ts'
import { refuseDamaged } from './refuseDamaged.ts'

export type AddPictures = {
  /** Stores files one after the other; of those that are refused the first says why, and the others are stored all the same. True: all are. */
  add(files: Iterable<File>): Promise<boolean>
  /** Of how many files how many are stored; null: none is under way. */
  progress: { done: number; of: number } | null
  error: TroubleMessage | null
}

/** Adds pictures to a specimen or a break, pasted ones too while the page is open. */
export function useAddPictures({ specimenId, breakId }: PictureOwner): AddPictures {
  const { client } = useHost()
  const by = useSigner()
  const [progress, setProgress] = useState<AddPictures['progress']>(null)
  const [error, setError] = useState<TroubleMessage | null>(null)

  const add = useCallback(
    async (given: Iterable<File>) => {
      const files = [...given]
      setError(null)
      const refused: { name: string; because: TroubleMessage }[] = []
      for (const [done, file] of files.entries()) {
        setProgress({ done, of: files.length })
        try {
          refuseLargePicture(file.name, file.size)
          const { name, content } = await readFile(file)
          await refuseDamaged(name, content)
          await client.call('pictures.attach', { specimenId, breakId, name, content, by })
        } catch (thrown) {
          refused.push({ name: file.name, because: troubleFrom(thrown) })
        }
      }
      setProgress(null)
      setError(toldOf(refused))
      return refused.length === 0
    },
    [client, specimenId, breakId, by],
  )

  useEffect(() => {
    const paste = (event: ClipboardEvent) => {
      const files = event.clipboardData?.files ?? []
      if (files.length === 0 || isTextForField(event)) return
      event.preventDefault()
      void add(files)
    }
    window.addEventListener('paste', paste)
    return () => window.removeEventListener('paste', paste)
  }, [add])

  return { add, progress, error }
}

function toldOf([first, ...others]: readonly { name: string; because: TroubleMessage }[]): TroubleMessage | null {
  if (first === undefined) return null
  const { code, message, hint } = first.because
  const also = othersNotKept(others.map(({ name }) => name))
  return { code, message: also === '' ? message : `${message} ${also}`, hint }
}

/** Cells of a sheet are copied as text and as a picture of them; in a field the text is meant. */
function isTextForField({ target, clipboardData }: ClipboardEvent): boolean {
  const isField = target instanceof Element && target.closest('input, textarea') !== null
  return isField && clipboardData?.types.includes('text/plain') === true
}
