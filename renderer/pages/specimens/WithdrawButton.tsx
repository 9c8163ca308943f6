import { useState } from 'react'
import { WithdrawDialog } from './list/WithdrawDialog.tsx'

/** Withdraws a specimen that waits and is lost or spoiled, or takes it back. */
export function WithdrawButton({ specimenId, isWithdrawn }: { specimenId: number; isWithdrawn: boolean }) {
  const [asking, setAsking] = useState(false)
  return (
    <>
      <button type="button" className="button" onClick={() => setAsking(true)}>
        {isWithdrawn ? 'Take back' : 'Withdraw'}
      </button>
      {asking ? (
        <WithdrawDialog
          specimenIds={[specimenId]}
          kind={isWithdrawn ? 'taken-back' : 'withdrawn'}
          onClose={() => setAsking(false)}
        />
      ) : null}
    </>
  )
}
