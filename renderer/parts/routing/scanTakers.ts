import { useEffect, useRef } from 'react'

/** Pages that use a scanned number themselves, the one shown last at the end. Each returns true for one that it used. */
const takers: ((number: string) => boolean)[] = []

/** Offers a scanned number to the page that is shown; false: it has no use of its own for it. */
export function takeScan(number: string): boolean {
  return takers.at(-1)?.(number) ?? false
}

/** Lets a page use scanned numbers while it is shown. */
export function useTakenScans(take: (number: string) => boolean): void {
  const latest = useRef(take)
  latest.current = take
  useEffect(() => {
    const taker = (number: string) => latest.current(number)
    takers.push(taker)
    return () => void takers.splice(takers.indexOf(taker), 1)
  }, [])
}
