import type { ReactNode } from 'react'
import { goToBlocks } from './blocksPlace.ts'
import './toBlocks.css'

/** A name or a number that leads to the blocks behind it. */
export function ToBlocks({
  group,
  ageMonths,
  children,
}: {
  group: string
  ageMonths: number | null
  children: ReactNode
}) {
  return (
    <button type="button" className="to-blocks" onClick={() => goToBlocks(group, ageMonths)}>
      {children}
    </button>
  )
}
