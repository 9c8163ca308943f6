import { pageFile } from '../page/pageFile.ts'
import { pageHeaders } from '../page/pageHeaders.ts'
import { isOwnPage } from './pageAddress.ts'

/** Answers a request for the page's own scheme from the folder of the built page, with the same headers as the loopback host. */
export async function servePage(
  request: { method: string; url: string },
  readPageFile: (segments: readonly string[]) => Promise<Uint8Array<ArrayBuffer>>,
): Promise<Response> {
  const refuse = (status: number) => new Response(null, { status, headers: pageHeaders([]) })
  if (request.method !== 'GET' || !isOwnPage(request.url)) return refuse(403)
  const file = pageFile(new URL(request.url).pathname)
  if (file === null) return refuse(404)
  let content: Uint8Array<ArrayBuffer>
  try {
    content = await readPageFile(file.segments)
  } catch {
    return refuse(404)
  }
  return new Response(content, { headers: { ...pageHeaders([]), 'Content-Type': file.contentType } })
}
