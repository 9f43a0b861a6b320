import { type ReactNode, useEffect, useRef } from 'react'
import { useStore } from 'zustand'
import type { Player } from '../player.ts'
import type { Stage } from '../stage/stage.ts'
import { labels } from '../words/labels.ts'
import { Panel } from './Panel.tsx'
import { panelNames } from './panelName.ts'
import { usePicture } from './usePicture.ts'

type Props = {
  readonly player: Player
  readonly stage: Promise<Stage>
  readonly ready: Stage | null
  readonly dark: boolean
  /** On a narrow screen one panel is large: which, by its index into the panels. */
  readonly largePanel: number
  readonly enlarge: (panel: number) => void
  /** Asks for another way of dancing in a picture, by its index into the panels. */
  readonly choose: (panel: number) => void
  /** Asks for the numbers of a performance, likewise. */
  readonly measure: (panel: number) => void
  /** What lies over the pictures. */
  readonly children: ReactNode
}

/** All performances side by side: one canvas behind a grid of panels. */
export function Panels({
  player,
  stage: starting,
  ready,
  dark,
  largePanel,
  enlarge,
  choose,
  measure,
  children,
}: Props) {
  const home = useRef<HTMLDivElement>(null)
  const lesson = useStore(player.store, (state) => state.lesson)
  const order = useStore(player.store, (state) => state.session.order)
  const names = useStore(player.store, (state) => state.session.names)
  const asked = useStore(player.store, (state) => state.asked)
  const playing = useStore(player.store, (state) => state.playing)
  // One that is not shown cannot be large.
  const large = Math.max(0, order.indexOf(largePanel))
  const { stage, failed } = usePicture(player, starting, ready, home, dark, order.length)

  useEffect(() => {
    if (stage === null) return
    stage.home.setAttribute('role', 'img')
    stage.home.setAttribute(
      'aria-label',
      names
        ? labels.picture(lesson.figure, panelNames(lesson, order, true))
        : labels.unnamedPicture(lesson.figure, order.length),
    )
  }, [stage, lesson, order, names])

  return (
    // What is said of a half beat is past as soon as it is read, so nothing is said while the figure plays.
    <div className={playing ? 'panels panels-playing' : 'panels'} data-count={order.length} ref={home}>
      {order.map((panel, place) => (
        <Panel
          // The place stays when it shows another fault: the canvas draws into it.
          key={panel}
          player={player}
          lesson={lesson}
          panel={panel}
          place={place}
          names={names}
          asked={asked}
          large={place === large}
          enlarge={enlarge}
          measure={measure}
          choose={choose}
        />
      ))}
      {children}
      {failed ? <p className="picture-failed">{labels.pictureFailed}</p> : null}
    </div>
  )
}
