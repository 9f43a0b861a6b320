import { createReadStream } from 'node:fs'
import { realpath, stat } from 'node:fs/promises'
import { createServer } from 'node:http'
import { extname, join, sep } from 'node:path'
import { CSP_HEADER } from './csp.mjs'

/** @type {Readonly<Record<string, string>>} */
const MIME = {
  '.css': 'text/css; charset=utf-8',
  '.html': 'text/html; charset=utf-8',
  '.ico': 'image/x-icon',
  '.js': 'text/javascript; charset=utf-8',
  '.json': 'application/json; charset=utf-8',
  '.map': 'application/json; charset=utf-8',
  '.png': 'image/png',
  '.svg': 'image/svg+xml; charset=utf-8',
  '.txt': 'text/plain; charset=utf-8',
  '.wasm': 'application/wasm',
  '.wav': 'audio/wav',
  '.webmanifest': 'application/manifest+json; charset=utf-8',
  '.woff2': 'font/woff2',
  '.yaml': 'text/yaml; charset=utf-8',
}

/** Sent with every answer. The three Cross-Origin lines make the page cross-origin isolated: finer clocks. */
const HEADERS = {
  'Content-Security-Policy': CSP_HEADER,
  'X-Content-Type-Options': 'nosniff',
  'Referrer-Policy': 'no-referrer',
  'Cross-Origin-Opener-Policy': 'same-origin',
  'Cross-Origin-Embedder-Policy': 'require-corp',
  'Cross-Origin-Resource-Policy': 'same-origin',
  'Cache-Control': 'no-cache',
}

/** How many ports after the wished one are tried when it is taken. */
const PORTS_TRIED = 50

/**
 * The file that an address stands for, or null when there is none to show: outside the folder (also by a symbolic
 * link), hidden (a part that begins with a dot), not a file, or not decodable.
 * @param {string} root real path of the folder served
 * @param {string} address path and query as they came in the request
 * @returns {Promise<{ path: string, bytes: number } | null>}
 */
async function findFile(root, address) {
  let path
  try {
    path = decodeURIComponent(address.replace(/[?#].*$/, ''))
  } catch {
    return null
  }
  if (path === '/') path = '/index.html'
  const parts = path.split('/').slice(1)
  if (!path.startsWith('/') || /[\\\0]/.test(path) || parts.some((part) => part === '' || part.startsWith('.'))) {
    return null
  }
  try {
    const real = await realpath(join(root, ...parts))
    if (!real.startsWith(root + sep)) return null
    const found = await stat(real)
    return found.isFile() ? { path: real, bytes: found.size } : null
  } catch {
    return null
  }
}

/**
 * @param {string} root
 * @param {import('node:http').IncomingMessage} request
 * @param {import('node:http').ServerResponse} response
 */
async function answer(root, request, response) {
  /** @param {number} status @param {string} text @param {Record<string, string>} [more] */
  const refuse = (status, text, more = {}) => {
    response.writeHead(status, { ...HEADERS, 'Content-Type': 'text/plain; charset=utf-8', ...more })
    response.end(request.method === 'HEAD' ? undefined : `${text}\n`)
  }
  if (request.method !== 'GET' && request.method !== 'HEAD') {
    return refuse(405, 'Only GET and HEAD', { Allow: 'GET, HEAD' })
  }
  const file = await findFile(root, request.url ?? '/')
  if (file === null) return refuse(404, 'Not found')
  response.writeHead(200, {
    ...HEADERS,
    'Content-Type': MIME[extname(file.path).toLowerCase()] ?? 'application/octet-stream',
    'Content-Length': file.bytes,
  })
  if (request.method === 'HEAD') return response.end()
  // The status is sent by now, so a file that fails half way can only be cut off.
  createReadStream(file.path)
    .on('error', () => response.destroy())
    .pipe(response)
}

/**
 * @param {import('node:http').Server} server
 * @param {number} port
 * @returns {Promise<boolean>} false when the port is taken
 */
function listen(server, port) {
  return new Promise((resolve, reject) => {
    /** @param {NodeJS.ErrnoException} error */
    const failed = (error) => (error.code === 'EADDRINUSE' ? resolve(false) : reject(error))
    server.once('error', failed)
    server.listen(port, '127.0.0.1', () => {
      server.off('error', failed)
      resolve(true)
    })
  })
}

/**
 * Serves a folder of built files to this machine only (127.0.0.1), with the policy and the headers above.
 * @param {{ root: string, port: number }} options `port` 0 takes any free one; a taken one gives the next free one
 * @returns {Promise<{ port: number, url: string, close: () => Promise<void> }>}
 * @throws when the folder does not exist, or no port is free
 */
export async function serve({ root, port }) {
  const folder = await realpath(root)
  const server = createServer((request, response) => {
    answer(folder, request, response).catch(() => response.destroy())
  })
  for (let tried = port; tried <= port + PORTS_TRIED && tried <= 65535; tried++) {
    if (!(await listen(server, tried))) continue
    const address = server.address()
    const taken = typeof address === 'object' && address !== null ? address.port : tried
    return {
      port: taken,
      url: `http://localhost:${taken}/`,
      close: () =>
        new Promise((resolve) => {
          server.close(() => resolve())
          server.closeAllConnections()
        }),
    }
  }
  throw new Error(`no free port from ${port} to ${Math.min(port + PORTS_TRIED, 65535)}`)
}
