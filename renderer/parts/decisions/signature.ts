// Held by tests/browser/breaks/signatures.spec.ts.
import { useState } from 'react'
import type { Signature } from '#contract/signature.ts'
import { rememberSigner, useSigner } from './signer.ts'

/** What is asked of the person who signs. `null`: it is not asked. */
export type Asked = { who: 'required' | 'optional' | null; why: 'required' | 'optional' | null }

/** A signature being written. `signature` is null while something that is required is missing. */
export type SignatureDraft = {
  by: string
  reason: string
  /** Something required was missing when the person wanted to go on. */
  missing: { who: boolean; why: boolean }
  signature: Signature | null
  setBy(by: string): void
  setReason(reason: string): void
  /** The person wants to go on: what is missing is said from now on, and the name is remembered. */
  ask(): void
}

/** Who signs and why, as it is being written. */
export function useSignature({ who, why }: Asked): SignatureDraft {
  const signer = useSigner()
  const [by, setBy] = useState(signer)
  const [reason, setReason] = useState('')
  const [asked, setAsked] = useState(false)
  const signature = { by: by.trim(), reason: reason.trim() }
  const without = {
    who: who === 'required' && signature.by === '',
    why: why === 'required' && signature.reason === '',
  }
  return {
    by,
    reason,
    missing: { who: asked && without.who, why: asked && without.why },
    signature: without.who || without.why ? null : signature,
    setBy,
    setReason,
    ask() {
      setAsked(true)
      if (who !== null && signature.by !== '') rememberSigner(signature.by)
    },
  }
}
