/** What came and what went between two lists, each as often as it does. */
export function gainedAndLost(before: readonly string[], now: readonly string[]): { gained: string[]; lost: string[] } {
  const left = [...before]
  const gained = now.filter((one) => {
    const at = left.indexOf(one)
    if (at >= 0) left.splice(at, 1)
    return at < 0
  })
  return { gained, lost: left }
}
