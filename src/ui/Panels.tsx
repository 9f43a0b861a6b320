import { useEffect, useRef, useState } from 'react'
import { useStore } from 'zustand'
import type { Player } from '../player.ts'
import type { Stage } from '../stage/stage.ts'
import { labels } from '../words/labels.ts'
import { Panel } from './Panel.tsx'
import { panelNames } from './panelName.ts'
import { usePicture } from './usePicture.ts'

type Props = { readonly player: Player; readonly stage: Promise<Stage>; readonly dark: boolean }

/** All performances side by side: one canvas behind a grid of panels. */
export function Panels({ player, stage: starting, dark }: Props) {
  const home = useRef<HTMLDivElement>(null)
  const lesson = useStore(player.store, (state) => state.lesson)
  const order = useStore(player.store, (state) => state.session.order)
  const names = useStore(player.store, (state) => state.session.names)
  const [large, setLarge] = useState(0)
  const { stage, failed } = usePicture(player, starting, home, dark)

  useEffect(() => {
    if (stage === null) return
    stage.canvas.setAttribute('role', 'img')
    stage.canvas.setAttribute(
      'aria-label',
      names
        ? labels.picture(lesson.figure, panelNames(lesson, order, true))
        : labels.unnamedPicture(lesson.figure, order.length),
    )
  }, [stage, lesson, order, names])

  return (
    <div className="panels" ref={home}>
      {order.map((panel, place) => (
        <Panel
          key={lesson.panels[panel]?.id}
          player={player}
          lesson={lesson}
          panel={panel}
          place={place}
          names={names}
          large={place === large}
          enlarge={setLarge}
        />
      ))}
      {failed ? <p className="picture-failed">{labels.pictureFailed}</p> : null}
    </div>
  )
}
