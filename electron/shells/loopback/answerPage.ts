import { readFile } from 'node:fs/promises'
import type { IncomingMessage, ServerResponse } from 'node:http'
import { join } from 'node:path'
import { pageFile } from '../page/pageFile.ts'
import { pageHeaders } from '../page/pageHeaders.ts'
import { type AccessSecrets, accessOf, cookieName, judgePage } from './accessGuard.ts'

const cookieAgeS = 30 * 24 * 3600
const text = { 'Content-Type': 'text/plain; charset=utf-8' }

/** Answers a request for the page: with a file of it, with the cookie for the ticket, or with why not. */
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
  if (decision.kind === 'exchange') {
    const cookie = `${cookieName(secrets.port)}=${secrets.session}; HttpOnly; SameSite=Strict; Path=/; Max-Age=${cookieAgeS}`
    return answer(303, { ...text, Location: '/', 'Set-Cookie': cookie }, 'Go on to /\n')
  }
  // The browser has come back with its cookie, so the ticket has done its work. Not before: a preview that only looked has not used it up.
  secrets.ticket = null
  const file = pageFile(decision.path)
  if (file === null) return answer(404, text, 'There is nothing here.\n')
  try {
    const content = await readFile(join(pageFolder, ...file.segments))
    answer(200, { 'Content-Type': file.contentType }, content)
  } catch {
    const unbuilt = decision.path === '/' ? ' The page is not built: run "npm run build".' : ''
    answer(404, text, `There is nothing here.${unbuilt}\n`)
  }
}
