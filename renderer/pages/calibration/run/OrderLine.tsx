import type { ReactNode } from 'react'
import './order.css'

/** What to do now, behind its shape, and what to mind while doing it. */
export function OrderLine({ shape, advice, children }: { shape: ReactNode; advice: string; children: ReactNode }) {
  return (
    <>
      <div className="order-line">
        {shape}
        {children}
      </div>
      <p className="order-advice" aria-live="polite">
        {advice}
      </p>
    </>
  )
}
