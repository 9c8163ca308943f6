import { listFilter, listQuery } from '#contract/listQuery.ts'
import type { ListView } from './usePagedList.ts'

const query = listQuery.omit({ offset: true, limit: true })
const filterKeys = Object.keys(listFilter.shape) as (keyof typeof listFilter.shape)[]

/** What an address says behind its page of how a list is looked at: "?text=epoxy&exposure=bilge"; '' where it is as at first. */
export function addressOfView(view: ListView): string {
  const { filter, ...plain } = query.parse(view)
  const standing = query.parse({})
  const said = new URLSearchParams()
  for (const [key, value] of Object.entries(plain))
    if (value !== standing[key as keyof typeof plain]) said.set(key, String(value))
  for (const key of filterKeys) if (filter[key] !== standing.filter[key]) said.set(key, String(filter[key]))
  const text = said.toString()
  return text === '' ? '' : `?${text}`
}

/** How an address says that a list is looked at; null: it says nothing, or what cannot be. */
export function viewInAddress(hash: string): ListView | null {
  const at = hash.indexOf('?')
  if (at < 0) return null
  const said = Object.fromEntries(new URLSearchParams(hash.slice(at)))
  const filter = Object.fromEntries(filterKeys.flatMap((key) => (key in said ? [[key, saidAs(key, said[key]!)]] : [])))
  const others = Object.fromEntries(Object.entries(said).filter(([key]) => !(key in listFilter.shape)))
  const read = query.safeParse({
    ...others,
    ...('descending' in others ? { descending: others.descending === 'true' } : {}),
    filter,
  })
  return read.success ? read.data : null
}

/** Numbers are those that the filter knows as such. */
function saidAs(key: keyof typeof listFilter.shape, text: string): string | number {
  return key === 'studyId' || /(?:Least|Most)/.test(key) ? Number(text) : text
}
