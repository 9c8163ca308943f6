import type { ClimateImportSummary, ClimateStore } from '#contract/findings/climate.ts'

/** A store as a value of a choice. */
export function keyOfStore({ kind, name }: ClimateStore): string {
  return `${kind} ${name}`
}

/** The stores that have imports, each once, those with imports that count first. */
export function storesOf(
  imports: readonly Pick<ClimateImportSummary, 'storeKind' | 'store' | 'setAside'>[],
): ClimateStore[] {
  const stores = new Map<string, ClimateStore>()
  const used = imports.filter(({ setAside }) => setAside === null)
  for (const { storeKind, store } of [...used, ...imports]) {
    const one = { kind: storeKind, name: store }
    if (!stores.has(keyOfStore(one))) stores.set(keyOfStore(one), one)
  }
  return [...stores.values()]
}
