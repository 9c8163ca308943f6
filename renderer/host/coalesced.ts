/**
 * Runs `work` whenever it is called, one at a time: called while it runs, it runs once more after that, however often it was
 * called meanwhile. `work` must not reject.
 */
export function coalesced(work: () => Promise<void>): () => void {
  let running = false
  let onceMore = false

  async function run(): Promise<void> {
    running = true
    do {
      onceMore = false
      await work()
    } while (onceMore)
    running = false
  }

  return () => {
    if (running) onceMore = true
    else void run()
  }
}
