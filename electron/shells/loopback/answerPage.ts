// Held by tests/shells/loopback/server.spec.ts.
import { readFile } from 'node:fs/promises'
import type { IncomingMessage, ServerResponse } from 'node:http'
import { join } from 'node:path'
import { pageFile } from '../page/pageFile.ts'
import { pageHeaders } from '../page/pageHeaders.ts'
import { type AccessSecrets, accessOf, cookieName, judgePage } from './accessGuard.ts'

const text = { 'Content-Type': 'text/plain; charset=utf-8' }
const nothingHere = 'There is nothing here.\n'
const unbuilt = 'There is nothing here. The page is not built: run "npm run build".\n'

/** Answers a request for the page: with a file of it, with the page and its secrets for the ticket, or with why not. */
export async function answerPage(
  request: IncomingMessage,
  response: ServerResponse,
  pageFolder: string,
  secrets: AccessSecrets,
): Promise<void> {
  const headers = pageHeaders([`ws://127.0.0.1:${secrets.port}`])
  const answer = (status: number, more: Record<string, string>, body: string | Uint8Array) => {
    response.writeHead(status, { ...headers, ...more })
    response.end(request.method === 'HEAD' ? undefined : body)
  }
  const decision = judgePage(accessOf(request), secrets)
  if (decision.kind === 'refuse') return answer(decision.status, text, `${decision.because}\n`)
  if (decision.kind === 'admitted') return answer(204, {}, '')
  // Before anything is waited for, so that of two that come at once only one is let in.
  if (decision.kind === 'exchange') secrets.ticketUsed = true
  const file = pageFile(decision.kind === 'exchange' ? '/' : decision.path)
  if (file === null) return answer(404, text, nothingHere)
  let content: Buffer
  try {
    content = await readFile(join(pageFolder, ...file.segments))
  } catch {
    if (decision.kind === 'exchange') secrets.ticketUsed = false
    return answer(404, text, file.segments[0] === 'index.html' ? unbuilt : nothingHere)
  }
  const type = { 'Content-Type': file.contentType }
  if (decision.kind === 'page') return answer(200, type, content)
  const cookie = `${cookieName(secrets.port)}=${secrets.session}; HttpOnly; SameSite=Strict; Path=/`
  answer(200, { ...type, 'Set-Cookie': cookie }, withTabSecret(content.toString('utf8'), secrets.tab))
}

/** The page with the tab's secret in its head, where its script finds it; in the address it would stay in the history. */
function withTabSecret(page: string, tab: string): string {
  return page.replace('<head>', `<head>\n    <meta name="breakledger-tab" content="${tab}" />`)
}
