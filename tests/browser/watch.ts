import type { Page } from '@playwright/test'
import type { Player } from '../../src/player.ts'
import type { Stage } from '../../src/stage/stage.ts'

/** What is counted from before the page's first script on. */
export type Watched = {
  /** Animation frames asked for. */
  frames: number
  /** React commits. */
  commits: number
  /** Times, in ms, at which something in the document was changed. */
  writes: number[]
  violations: string[]
}

/** The program in the page, as main.tsx hands it out. */
type Running = { readonly player: Player; readonly stage: Promise<Stage>; close(): Promise<void> }

declare global {
  interface Window {
    watched: Watched
    overfoot: Running & { start(): Running }
    __REACT_DEVTOOLS_GLOBAL_HOOK__: object
  }
}

/** Counts frames, commits, writes and policy violations. Call before the page is opened. */
export async function watch(page: Page): Promise<void> {
  await page.addInitScript(() => {
    const watched: Watched = { frames: 0, commits: 0, writes: [], violations: [] }
    window.watched = watched
    const ask = window.requestAnimationFrame.bind(window)
    window.requestAnimationFrame = (callback) => {
      watched.frames++
      return ask(callback)
    }
    // React tells this hook, and no other, of every commit.
    window.__REACT_DEVTOOLS_GLOBAL_HOOK__ = {
      isDisabled: false,
      supportsFiber: true,
      renderers: new Map(),
      inject: () => 1,
      onCommitFiberRoot: () => watched.commits++,
      onCommitFiberUnmount: () => {},
      onPostCommitFiberRoot: () => {},
      checkDCE: () => {},
    }
    document.addEventListener('securitypolicyviolation', ({ violatedDirective, blockedURI }) => {
      watched.violations.push(`${violatedDirective}: ${blockedURI}`)
    })
    addEventListener('DOMContentLoaded', () => {
      new MutationObserver(() => watched.writes.push(performance.now())).observe(document, {
        subtree: true,
        childList: true,
        characterData: true,
        attributes: true,
      })
    })
  })
}

/**
 * Takes WebGL away, before the page is opened: as on a device without a GPU. The canvas renderer is also several times
 * faster than WebGL in software, so whatever is not about the GPU is tested with it.
 */
export async function withoutGpu(page: Page): Promise<void> {
  await page.addInitScript(() => {
    for (const kind of [HTMLCanvasElement, OffscreenCanvas]) {
      const real = kind.prototype.getContext as (this: unknown, ...args: unknown[]) => unknown
      Object.defineProperty(kind.prototype, 'getContext', {
        value(this: unknown, name: string, ...rest: unknown[]) {
          return name.startsWith('webgl') ? null : real.call(this, name, ...rest)
        },
      })
    }
  })
}

/** Opens the page and waits until its picture stands; the greeting is over, and the first figure stands at its start. */
export async function open(page: Page): Promise<void> {
  await openGreeting(page)
  await page.evaluate(() => {
    const { player } = window.overfoot
    player.pause()
    player.choose(player.store.getState().session.figure)
    const { from, to } = player.store.getState().lesson.dance.tempo
    player.setTempo((from + to) / 2)
  })
}

/** Opens the page and waits until its picture stands, as a visitor does. In a reused page the program is started anew. */
export async function openGreeting(page: Page): Promise<void> {
  if (page.url() === 'about:blank') {
    await watch(page)
    await page.goto('/')
    await page.waitForFunction(() => window.overfoot !== undefined)
  } else {
    await page.evaluate(() => {
      const { start } = window.overfoot
      Object.assign(window, { overfoot: { ...start(), start } })
    })
  }
  // Soon enough for the test to say why, should there never be a picture.
  await page.evaluate(async (patience) => {
    const from = performance.now()
    const wait = () => new Promise((done) => setTimeout(done, 20))
    let stage: Stage | null = null
    window.overfoot.stage.then((started) => {
      stage = started
    })
    while (stage === null || (stage as Stage).counts.draws === 0) {
      await wait()
      if (performance.now() - from < patience) continue
      const { width, height } = document.querySelector('.panels')?.getBoundingClientRect() ?? new DOMRect()
      const of = `${document.readyState}, ${document.visibilityState}, panels ${width}×${height}`
      throw new Error(`no picture after ${patience} ms: ${stage === null ? 'no stage' : 'nothing drawn'}, ${of}`)
    }
  }, 20_000)
  // A visitor cannot press anything before.
  await page.waitForFunction(() => document.querySelector('#overfoot[inert]') === null)
}

/** The beat that the page stands on. */
export const beatNow = (page: Page): Promise<number> => page.evaluate(() => window.overfoot.player.beatNow())

/** How many different colours each panel's middle shows at a beat, read in the same task in which it was drawn. */
export function coloursAt(page: Page, at: number): Promise<number[]> {
  return page.evaluate(async (beat) => {
    const { player, stage } = window.overfoot
    const { canvas } = await stage
    player.seek(beat)
    const copy = document.createElement('canvas')
    copy.width = canvas.width
    copy.height = canvas.height
    const pen = copy.getContext('2d')
    if (pen === null) throw new Error('no 2D canvas to read with')
    pen.drawImage(canvas, 0, 0)
    const home = canvas.getBoundingClientRect()
    const scale = canvas.width / home.width
    return [...document.querySelectorAll('.picture')].map((picture) => {
      const { x, y, width, height } = picture.getBoundingClientRect()
      const pixels = pen.getImageData((x - home.x) * scale, (y - home.y) * scale, width * scale, height * scale).data
      return new Set(new Uint32Array(pixels.buffer)).size
    })
  }, at)
}
