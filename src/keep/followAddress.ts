import type { Player } from '../player.ts'
import type { LinkedView, LinkRefusal } from './viewOfLink.ts'

/** What reads links comes with the first of them. */
async function viewOf(player: Player, fragment: string): Promise<LinkedView | LinkRefusal | 'not loaded'> {
  const reading = await import('./viewOfLink.ts').catch(() => null)
  return reading === null ? 'not loaded' : reading.viewOfLink(player, fragment)
}

export type Address = {
  /** Writes the fragment of what is on the screen; it goes when that changes. Returns the whole address. */
  hold(fragment: string): string
  stop(): void
}

const fragmentNow = (): string => location.hash.slice(1)

/**
 * Opens what the address says, now and whenever its fragment changes, and takes the fragment out once the view is
 * another, so that the address does not pretend to follow.
 * @param refused told why a fragment was not opened; the page is as it was then
 */
export function followAddress(player: Player, refused: (why: LinkRefusal | 'not loaded') => void): Address {
  let latest = 0
  let opening = false
  let held = player.store.getState().session

  function restore(view: LinkedView): LinkRefusal | null {
    opening = true
    try {
      player.restore(view.session, view.brought)
      return null
    } catch {
      return 'unfit'
    } finally {
      opening = false
    }
  }

  async function open(): Promise<void> {
    latest++
    const mine = latest
    if (fragmentNow() === '') return
    const view = await viewOf(player, fragmentNow())
    // Another address, or none, has come in between.
    if (mine !== latest) return
    const why = typeof view === 'string' ? view : restore(view)
    held = player.store.getState().session
    if (why !== null) refused(why)
  }

  const stopStore = player.store.subscribe(({ session, playing }) => {
    if (opening || (session === held && !playing) || fragmentNow() === '') return
    latest++
    history.replaceState(history.state, '', location.pathname + location.search)
  })
  const onChange = (): void => void open()
  addEventListener('hashchange', onChange)
  onChange()
  return {
    hold(fragment) {
      latest++
      held = player.store.getState().session
      history.replaceState(history.state, '', `#${fragment}`)
      return location.href
    },
    stop() {
      latest++
      stopStore()
      removeEventListener('hashchange', onChange)
    },
  }
}
