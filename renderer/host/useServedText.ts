// Held by tests/browser/bothHosts.spec.ts.
import { useEffect, useState } from 'react'
import type { TroubleMessage } from '#contract/errors.ts'
import type { Answer } from './useAnswer.ts'

/** The text of a file that lies beside the page, wherever that came from. Never throws. */
export function useServedText(name: string): Answer<string> {
  const [answer, setAnswer] = useState<Answer<string>>({ value: null, error: null, pending: true })
  useEffect(() => {
    const unwanted = new AbortController()
    readServed(name, unwanted.signal).then(
      (value) => setAnswer({ value, error: null, pending: false }),
      () => unwanted.signal.aborted || setAnswer({ value: null, error: unread(name), pending: false }),
    )
    return () => unwanted.abort()
  }, [name])
  return answer
}

async function readServed(name: string, signal: AbortSignal): Promise<string> {
  const served = await fetch(name, { signal })
  if (!served.ok) throw new Error(`answered with ${served.status}`)
  return served.text()
}

const unread = (name: string): TroubleMessage => ({
  code: 'not-readable',
  message: `The text ${name} cannot be read.`,
  hint: 'Load the page again. If that does not help, install Breakledger again.',
})
