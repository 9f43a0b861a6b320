import { mkdir, mkdtemp, rm, symlink, writeFile } from 'node:fs/promises'
import { request } from 'node:http'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { CSP_HEADER, CSP_META } from '../../src/serve/csp.mjs'
import { serve } from '../../src/serve/serve.mjs'

let folder = ''
let server: Awaited<ReturnType<typeof serve>>

type Answer = { status: number; headers: NodeJS.Dict<string | string[]>; body: string }

/** By node:http, because fetch tidies an address up before it sends it. */
function ask(path: string, method = 'GET'): Promise<Answer> {
  return new Promise((resolve, reject) => {
    request({ host: '127.0.0.1', port: server.port, path, method }, (response) => {
      let body = ''
      response.setEncoding('utf8')
      response.on('data', (part: string) => {
        body += part
      })
      response.on('end', () => resolve({ status: response.statusCode ?? 0, headers: response.headers, body }))
    })
      .on('error', reject)
      .end()
  })
}

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'overfoot-serve-'))
  const root = join(folder, 'dist')
  await mkdir(join(root, 'assets'), { recursive: true })
  await mkdir(join(root, '.vite'))
  await mkdir(join(folder, 'dist-other'))
  await writeFile(join(root, 'index.html'), '<p>page')
  await writeFile(join(root, 'assets', 'main.js'), 'export {}')
  await writeFile(join(root, 'assets', 'a b.css'), 'p {}')
  await writeFile(join(root, 'data.unknown'), '?')
  await writeFile(join(root, '.vite', 'manifest.json'), '{}')
  await writeFile(join(folder, 'secret.txt'), 'secret')
  await writeFile(join(folder, 'dist-other', 'secret.txt'), 'secret')
  await symlink(join(folder, 'secret.txt'), join(root, 'link.txt'))
  server = await serve({ root, port: 0 })
})

afterAll(async () => {
  await server.close()
  await rm(folder, { recursive: true })
})

describe('serve({ root, port })', () => {
  it.each([
    ['/', 'text/html; charset=utf-8', '<p>page'],
    ['/?figure=box', 'text/html; charset=utf-8', '<p>page'],
    ['/index.html', 'text/html; charset=utf-8', '<p>page'],
    ['/assets/main.js', 'text/javascript; charset=utf-8', 'export {}'],
    ['/assets/a%20b.css', 'text/css; charset=utf-8', 'p {}'],
    ['/data.unknown', 'application/octet-stream', '?'],
  ])('gives %s as %s', async (path, type, body) => {
    const answer = await ask(path)
    expect([answer.status, answer.headers['content-type'], answer.body]).toEqual([200, type, body])
  })

  it.each([
    ['what is not there', '/nothing.js'],
    ['a folder', '/assets'],
    ['a folder', '/assets/'],
    ['a way out', '/../secret.txt'],
    ['a way out further down', '/assets/../../secret.txt'],
    ['an encoded way out', '/%2e%2e/secret.txt'],
    ['an encoded way out', '/..%2fsecret.txt'],
    ['an encoded way out', '/%2e%2e%5csecret.txt'],
    ['a folder whose name begins alike', '/../dist-other/secret.txt'],
    ['a link out', '/link.txt'],
    ['an absolute path', '//etc/passwd'],
    ['what is hidden', '/.vite/manifest.json'],
    ['a zero byte', '/index.html%00.js'],
    ['what cannot be decoded', '/%E0%A4%A'],
    ['another server', 'http://other.example/'],
  ])('refuses %s: %s', async (_what, path) => {
    const answer = await ask(path)
    expect([answer.status, answer.body]).toEqual([404, 'Not found\n'])
  })

  it.each(['/', '/nothing'])('sends the policy and the other headers with %s', async (path) => {
    const { headers } = await ask(path)
    expect(headers).toMatchObject({
      'content-security-policy': CSP_HEADER,
      'x-content-type-options': 'nosniff',
      'referrer-policy': 'no-referrer',
      'cross-origin-opener-policy': 'same-origin',
      'cross-origin-embedder-policy': 'require-corp',
      'cross-origin-resource-policy': 'same-origin',
    })
  })

  it('answers HEAD without a body and refuses what would change something', async () => {
    const head = await ask('/', 'HEAD')
    expect([head.status, head.headers['content-length'], head.body]).toEqual([200, '7', ''])
    const post = await ask('/', 'POST')
    expect([post.status, post.headers.allow]).toEqual([405, 'GET, HEAD'])
  })

  it('takes the next free port when the wished one is taken', async () => {
    const second = await serve({ root: folder, port: server.port })
    expect(second.port).toBeGreaterThan(server.port)
    expect(second.url).toBe(`http://localhost:${second.port}/`)
    await second.close()
  })

  it('throws when there is no such folder', async () => {
    await expect(serve({ root: join(folder, 'nothing'), port: 0 })).rejects.toThrow('ENOENT')
  })
})

describe('the policy', () => {
  it('begins with nothing and adds only the page itself', () => {
    expect(CSP_META).toMatch(/^default-src 'none'; /)
    const allowed = new Set(CSP_META.split('; ').flatMap((directive) => directive.split(' ').slice(1)))
    expect(allowed).toEqual(new Set(["'none'", "'self'"]))
  })

  it('keeps other pages from framing this one where a header can say so', () => {
    expect(CSP_HEADER).toBe(`${CSP_META}; frame-ancestors 'none'`)
  })
})
