import { useState } from 'react'
import type { FoundNumber } from '#contract/programme/labelProcedures.ts'
import { numberNotFoundWords, plannedBlockWords } from '#words/programme/findWords.ts'
import { useAction } from '../../../host/useAction.ts'
import { useQuantities } from '../../../host/useQuantities.ts'
import { useTakenScans } from '../../../parts/routing/scanTakers.ts'
import { hashOf } from '../../../routes/route.ts'
import { Notice } from '../../../widgets/Notice.tsx'

type Scanned = { typed: string; found: FoundNumber }

/** A block that is scanned at the bench is put on it; what stands in the way is said, with the way on. */
export function ScannedBlock({ isLoading }: { isLoading: boolean }) {
  const find = useAction('numbers.find')
  const take = useAction('bench.takeSpecimen')
  const { length } = useQuantities()
  const [scanned, setScanned] = useState<Scanned | null>(null)

  async function scan(typed: string): Promise<void> {
    setScanned(null)
    const found = await find.run({ number: typed })
    if (found === null) return
    const isTaken =
      found.kind === 'specimen' && !isLoading && (await take.run({ specimenId: found.specimenId })) !== null
    if (!isTaken) setScanned({ typed, found })
  }
  useTakenScans((number) => {
    void scan(number)
    return true
  })

  const error = find.error ?? take.error
  if (scanned === null && error === null) return null
  return (
    <div className="scanned" role="status">
      {scanned === null || scanned.found.kind === 'specimen' ? null : scanned.found.kind === 'planned' ? (
        <p>{plannedBlockWords(scanned.found, length)}</p>
      ) : (
        <p>{numberNotFoundWords(scanned.typed, scanned.found)}</p>
      )}
      {scanned?.found.kind === 'none'
        ? scanned.found.nearest.map((number) => (
            <button type="button" key={number} className="button button-small" onClick={() => void scan(number)}>
              {number}
            </button>
          ))
        : null}
      <Notice trouble={error}>
        {scanned?.found.kind === 'specimen' ? (
          <a href={hashOf({ page: 'specimen', specimenId: scanned.found.specimenId })}>Open {scanned.found.number}</a>
        ) : null}
      </Notice>
      <button
        type="button"
        className="button button-quiet button-small"
        onClick={() => {
          setScanned(null)
          find.dismiss()
          take.dismiss()
        }}
      >
        Dismiss
      </button>
    </div>
  )
}
