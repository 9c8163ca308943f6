/** A value that changes, and those who want to know. */
export type Store<T> = {
  get(): T
  set(value: T): void
  /** Calls back after every change until the returned function is called. */
  subscribe(call: () => void): () => void
}

/** A store that holds `value` until it is set. */
export function createStore<T>(value: T): Store<T> {
  const calls = new Set<() => void>()
  return {
    get: () => value,
    set(next) {
      value = next
      for (const call of calls) call()
    },
    subscribe(call) {
      calls.add(call)
      return () => calls.delete(call)
    },
  }
}
