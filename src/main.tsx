import './ui/base.css'
import './ui/bar.css'
import './ui/panels.css'
import './ui/strip.css'
import './ui/touch.css'
import './ui/controls.css'
import './ui/ranges.css'
import './ui/open.css'
import './ui/sheet.css'
import './ui/practice.css'
import './ui/teach.css'
import './ui/low.css'
import './ui/beside.css'
import './ui/forced.css'
import { figures } from 'virtual:figures'
import { soundingDriver } from './clock/soundingDriver.ts'
import { createPlayer } from './createPlayer.ts'
import { fileOf } from './figure/ownFigure.ts'
import type { SavedText } from './keep/saveText.ts'
import type { Player } from './player.ts'
import { SAMPLE_RATE } from './sound/beatLasts.ts'
import { createSpeaker, type SoundContext } from './sound/speaker.ts'
import type { Stage } from './stage/stage.ts'
import { layOutMarkup, reveal } from './ui/layOutMarkup.ts'
import { pageDriver } from './ui/pageDriver.ts'
import { parts } from './ui/parts.ts'
import { sayNotLoaded } from './ui/sayNotLoaded.ts'
import { showInMarkup } from './ui/showInMarkup.ts'

/** The program in the page. */
type Running = {
  readonly player: Player
  readonly stage: Promise<Stage>
  /** Takes everything out of the page again. */
  close(): Promise<void>
}

/** The visitor's own figure on the screen: after a failure the way to keep it. */
function mine(player: Player): SavedText | null {
  const { own, session } = player.store.getState()
  const found = own.find(({ figure }) => figure.id === session.figure)
  return found === undefined ? null : { name: fileOf(found), text: found.text }
}

/** Milliseconds that the page waits for the stage, and React for the picture; on a slow line they come without. */
const PATIENCE = 300

/** The stage, or null when it is not there soon, or never. */
const soon = (stage: Promise<Stage>): Promise<Stage | null> =>
  Promise.race([
    stage.catch(() => null),
    new Promise<null>((done) => {
      setTimeout(() => done(null), PATIENCE)
    }),
  ])

/** When the browser has had the time to paint; at most a tenth of a second, for hidden pages are not painted. */
const painted = (): Promise<void> =>
  new Promise((done) => {
    requestAnimationFrame(() => setTimeout(done))
    setTimeout(done, 100)
  })

/** Made within a press; null where the browser has no sound. */
const soundContext = (): SoundContext | null => {
  if (typeof AudioContext === 'undefined') return null
  // What must not crackle may come a little later.
  const latencyHint = 'balanced'
  try {
    // At our own rate, so that a device with another one converts what is heard once, and not each sound by itself.
    return new AudioContext({ latencyHint, sampleRate: SAMPLE_RATE })
  } catch {
    return new AudioContext({ latencyHint })
  }
}

function start(home: HTMLElement): Running {
  // The stage begins before React, so that the picture does not wait for the rest of the page.
  const stage = import('./stage/stage.ts').then(({ createStage }) =>
    // As large as it must be only when the page knows where it goes.
    createStage({ width: 1, height: 1, resolution: devicePixelRatio }),
  )
  const speaker = createSpeaker(soundContext, () => performance.now() / 1000)
  const driver = soundingDriver(pageDriver(), speaker)
  const player = createPlayer(figures, driver)
  /** The first demo, which every test draws; a figure that cannot be drawn must not come back. */
  const startAnew = (): void => {
    player.pause()
    const first = figures[0]
    if (first !== undefined) player.choose(first.id)
  }
  layOutMarkup(home)
  let closed = false
  let unmount: (() => void) | null = null
  /** The picture first, into the page as it came; then what makes the page answer. */
  const come = async (): Promise<void> => {
    const ready = await soon(stage)
    if (closed) return
    let shown = false
    try {
      shown = ready !== null && showInMarkup(player, ready, home)
    } catch {} // React comes upon the same, and says so
    reveal(home)
    if (shown) await painted()
    const mounting = await import('./ui/mountPage.tsx').catch(() => null)
    if (closed) return
    if (mounting === null) {
      sayNotLoaded(home)
      // The picture may still be on its way.
      const late = shown ? null : await stage.catch(() => null)
      if (late !== null && !closed) showInMarkup(player, late, home)
      return
    }
    unmount = mounting.mountPage(home, {
      ...{ player, stage, ready, startAnew },
      source: { speaker, driver },
      mine: () => mine(player),
    })
  }
  void come()
  return {
    player,
    stage,
    async close() {
      closed = true
      player.pause()
      if (unmount === null) home.replaceChildren()
      else unmount()
      speaker.close()
      await stage.then(
        (started) => started.destroy(),
        () => {},
      )
    },
  }
}

const home = document.getElementById('overfoot')
if (home === null) throw new Error('the page has no element "overfoot" to start in')
const running = start(home)

/** Milliseconds after the stage, so that the first picture is not held up. */
const AFTER_THE_PICTURE = 1000

// What comes later, and what takes over from a GPU that fails, is fetched while the page is online, so that it also works
// without a network.
running.stage
  .catch(() => null)
  .then(() =>
    setTimeout(
      () =>
        Promise.allSettled([
          import('./clock/gsapDriver.ts'),
          import('./conductor.ts'),
          import('./practice.ts'),
          import('./keep/keptLadders.ts'),
          import('./along.ts'),
          import('./ui/ClimbBar.tsx'),
          import('./keep/loadVoice.ts').then(({ loadVoice }) => loadVoice()),
          import('./figure/parse.ts'),
          import('./ui/ProblemDialog.tsx'),
          import('./keep/viewOfLink.ts'),
          import('./stage/canvasRenderer.ts'),
          ...Object.values(parts).map((load) => load()),
        ]),
      AFTER_THE_PICTURE,
    ),
  )

// For the curious at the console, and for the tests: `overfoot.player.seek(1)`, `(await overfoot.stage).counts`.
Object.assign(globalThis, { overfoot: { ...running, start: () => start(home) } })
