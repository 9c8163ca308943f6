/**
 * The content security policy of the page: its own files and nothing else, nothing inline, no frame around it.
 * `connect` names the addresses it may talk to besides its own.
 */
export function contentSecurityPolicy(connect: readonly string[]): string {
  return [
    "default-src 'none'",
    "script-src 'self'",
    "style-src 'self'",
    "img-src 'self'",
    "font-src 'self'",
    `connect-src ${["'self'", ...connect].join(' ')}`,
    "base-uri 'none'",
    "form-action 'none'",
    "frame-ancestors 'none'",
    "object-src 'none'",
  ].join('; ')
}

/** Headers of every answer, on both hosts. */
export function pageHeaders(connect: readonly string[]): Record<string, string> {
  return {
    'Content-Security-Policy': contentSecurityPolicy(connect),
    'X-Content-Type-Options': 'nosniff',
    'X-Frame-Options': 'DENY',
    'Referrer-Policy': 'no-referrer',
    'Cross-Origin-Opener-Policy': 'same-origin',
    'Cross-Origin-Resource-Policy': 'same-origin',
    // The camera for the page itself, which asks for it when a person wants to take a photograph.
    'Permissions-Policy': 'camera=(self), microphone=(), geolocation=(), usb=(), serial=(), hid=()',
    'Cache-Control': 'no-store',
  }
}
