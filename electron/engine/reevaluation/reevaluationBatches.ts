/** So many results make one transaction: some milliseconds, in which no sample of a running capture can be written ... */
const mostInBatch = 32
/** ... and after this time, ms, what there is goes out, so that progress is seen. */
const longestMs = 250

/** Gathers what a long loop yields into small batches. */
export function* batchesOf<One>(source: Iterable<One>, nowMs: () => number): Generator<One[]> {
  let batch: One[] = []
  let since = nowMs()
  for (const one of source) {
    batch.push(one)
    if (batch.length < mostInBatch && nowMs() - since < longestMs) continue
    yield batch
    batch = []
    since = nowMs()
  }
  if (batch.length > 0) yield batch
}
