const contentTypes: Readonly<Record<string, string>> = {
  html: 'text/html; charset=utf-8',
  js: 'text/javascript; charset=utf-8',
  css: 'text/css; charset=utf-8',
  svg: 'image/svg+xml',
  png: 'image/png',
  ico: 'image/x-icon',
  woff2: 'font/woff2',
  json: 'application/json; charset=utf-8',
  txt: 'text/plain; charset=utf-8',
}

/** A file of the built page, as path segments below its folder. */
export type PageFile = { segments: string[]; contentType: string }

// A segment starts with a letter, a digit or _ and holds no separator, so that "..", drive letters and hidden files have no name here.
const plainSegment = /^[A-Za-z0-9_][A-Za-z0-9._-]*$/

/**
 * Which file of the page an address path ("/", "/assets/index.js") asks for, or null when it names none.
 * Nothing is decoded: the page's own file names need no escapes, and what carries one is refused.
 */
export function pageFile(path: string): PageFile | null {
  const segments = path === '/' ? ['index.html'] : path.split('/').slice(1)
  if (!path.startsWith('/') || !segments.every((segment) => plainSegment.test(segment))) return null
  const extension = segments.at(-1)?.split('.').at(-1) ?? ''
  const contentType = Object.hasOwn(contentTypes, extension) ? contentTypes[extension] : undefined
  return contentType === undefined ? null : { segments, contentType }
}
