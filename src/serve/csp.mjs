/**
 * The one home of the Content-Security-Policy: everything comes from the page's own origin, as files. Nothing inline,
 * no eval, no data: addresses, no other origin.
 */
const DIRECTIVES = [
  "default-src 'none'",
  "script-src 'self'",
  "style-src 'self'",
  "img-src 'self'",
  "font-src 'self'",
  "connect-src 'self'",
  "base-uri 'none'",
  "form-action 'none'",
]

/** The policy for a `<meta http-equiv>`, so that the page keeps it on any host. */
export const CSP_META = DIRECTIVES.join('; ')

/** The policy as our server sends it; browsers ignore `frame-ancestors` in a meta element, so only the header has it. */
export const CSP_HEADER = [...DIRECTIVES, "frame-ancestors 'none'"].join('; ')
