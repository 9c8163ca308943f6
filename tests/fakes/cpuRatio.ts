/** How much more processor time a work takes at the larger of two sizes; of each size the quickest of some turns counts. */
export async function cpuRatio(
  small: number,
  large: number,
  work: (size: number) => void | Promise<void>,
): Promise<number> {
  const quickest = async (size: number) => {
    let least = Number.POSITIVE_INFINITY
    // Short works are repeated until the clock of the processor can tell them.
    for (let turn = 0; turn < 5; turn++) {
      const before = process.cpuUsage()
      let times = 0
      let spent = 0
      do {
        await work(size)
        times++
        const { user, system } = process.cpuUsage(before)
        spent = user + system
      } while (spent < 5000)
      least = Math.min(least, spent / times)
    }
    return least
  }
  await work(small)
  return (await quickest(large)) / (await quickest(small))
}
