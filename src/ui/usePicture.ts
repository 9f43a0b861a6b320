import { type RefObject, useEffect, useLayoutEffect, useState } from 'react'
import type { Player } from '../player.ts'
import type { Stage } from '../stage/stage.ts'
import { measurePictures, picturesIn } from './measurePictures.ts'

/** Tells of every change of the device's pixel ratio (another screen, the browser's zoom). Returns what stops it. */
function onPixelRatio(changed: () => void): () => void {
  let media = matchMedia(`(resolution: ${devicePixelRatio}dppx)`)
  const next = (): void => {
    media.removeEventListener('change', next)
    media = matchMedia(`(resolution: ${devicePixelRatio}dppx)`)
    media.addEventListener('change', next)
    changed()
  }
  media.addEventListener('change', next)
  return () => media.removeEventListener('change', next)
}

/**
 * Tells when the page is looked at again: browsers throw away the pictures of pages that were hidden for long, and do not
 * say so. Returns what stops it.
 */
function onReturn(returned: () => void): () => void {
  const listeners = new AbortController()
  const { signal } = listeners
  document.addEventListener('visibilitychange', () => document.visibilityState === 'visible' && returned(), { signal })
  addEventListener('pageshow', returned, { signal })
  addEventListener('focus', returned, { signal })
  return () => listeners.abort()
}

/** Keeps the canvas as large as its home and the panels where the page's grid has them. Returns what stops it. */
function follow(player: Player, stage: Stage, home: HTMLElement, dark: boolean): () => void {
  let fitted = ''
  // Resized and drawn in one go, before the browser paints: no blank picture in between.
  const frame = (): void => {
    const measured = measurePictures(home)
    const { width, height, ratio, rects } = measured
    if (width === 0 || height === 0) return
    fitted = JSON.stringify(measured)
    stage.resize(width, height, ratio)
    player.show(stage, rects, dark)
  }
  const hasChanged = (): boolean => JSON.stringify(measurePictures(home)) !== fitted
  const resized = (): void => {
    if (hasChanged()) frame()
  }
  const comeBack = (): void => {
    if (hasChanged()) frame()
    else player.redraw()
  }
  // At once: the observer would tell of the first size a frame later.
  frame()
  const observer = new ResizeObserver(resized)
  for (const element of [home, ...picturesIn(home)]) observer.observe(element)
  const stopRatio = onPixelRatio(resized)
  const stopReturn = onReturn(comeBack)
  return () => {
    observer.disconnect()
    stopRatio()
    stopReturn()
  }
}

/**
 * Lays the stage's canvas behind the panels' grid. The stage began before React and lives as long as the page.
 * @param ready the stage, where it has come already
 * @param home holds the grid; the canvas goes in first
 * @param panels how many there are
 */
export function usePicture(
  player: Player,
  starting: Promise<Stage>,
  ready: Stage | null,
  home: RefObject<HTMLElement | null>,
  dark: boolean,
  panels: number,
): { readonly stage: Stage | null; readonly failed: boolean } {
  const [stage, setStage] = useState(ready)
  const [failed, setFailed] = useState(false)
  useEffect(() => {
    let gone = false
    starting.then(
      (started) => gone || setStage(started),
      () => gone || setFailed(true),
    )
    return () => {
      gone = true
    }
  }, [starting])
  useLayoutEffect(() => {
    if (stage === null || home.current === null) return
    home.current.prepend(stage.home)
    const stop = stage.onFailed(() => setFailed(true))
    return () => {
      stop()
      stage.home.remove()
    }
  }, [stage, home])
  useLayoutEffect(() => {
    if (stage === null || home.current === null || panels === 0) return
    return follow(player, stage, home.current, dark)
  }, [player, stage, home, dark, panels])
  return { stage, failed }
}
