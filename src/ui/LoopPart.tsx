import { type ReactNode, useId, useMemo } from 'react'
import { useStore } from 'zustand'
import type { Player } from '../player.ts'
import { barsFrom, barsIn, barsOf } from '../session/bars.ts'
import { beatsOnce } from '../session/beatsOnce.ts'
import { canFollowItself } from '../session/canFollowItself.ts'
import { withCountIn, withJoined, withSteps } from '../session/session.ts'
import { COUNT_IN_BARS } from '../timing/countIn.ts'
import { musicPlace } from '../timing/counts.ts'
import { countWords } from '../words/countWords.ts'
import { loopWords } from '../words/loopWords.ts'
import { Choice } from './Choice.tsx'

/** What is danced over and over: all of the figure, without a stop where it can, or a part of it; and counting in. */
export function LoopPart({ player }: { readonly player: Player }) {
  const lesson = useStore(player.store, (state) => state.lesson)
  const timing = useStore(player.store, (state) => state.session.timing)
  const some = useStore(player.store, (state) => state.session.steps !== null)
  const wantsJoined = useStore(player.store, (state) => state.session.joined)
  const countIn = useStore(player.store, (state) => state.session.countIn)
  const { figure, part, dance, once, steps, round } = lesson
  const { schedule } = once
  const following = useMemo(() => canFollowItself(figure, timing), [figure, timing])
  const [from, to] = part === null ? [0, schedule.length] : [part.from, part.to]
  const all = barsOf(schedule)
  const chosen = part === null ? null : barsIn(schedule, part)
  /** From the bar that is shown now. */
  const loopBars = (count: number): void => {
    const shown = beatsOnce(lesson, player.gridBeat(), player.gridBeat()).from
    // What leads in and what follows belong to the part that is looped.
    const at = part === null ? shown : Math.min(part.to - schedule.grid, Math.max(part.from, shown))
    const bars = barsFrom(schedule, at, count)
    player.setPart(bars.from, bars.to)
  }
  return (
    <fieldset className="sheet-group practice-group">
      <legend>{loopWords.title}</legend>
      <p className="sheet-note">{loopWords.hint}</p>
      <div className="practice-buttons">
        <button
          type="button"
          className="toggle"
          aria-pressed={part === null && !some}
          onClick={() => player.change((session) => withSteps(session, null))}
        >
          {loopWords.whole}
        </button>
        {[1, 2].map((count) => (
          <button
            key={count}
            type="button"
            className="toggle"
            aria-pressed={chosen === count}
            disabled={count > all}
            onClick={() => loopBars(count)}
          >
            {loopWords.bars(count)}
          </button>
        ))}
      </div>
      {all < 2 ? <p className="sheet-note">{loopWords.oneBar}</p> : null}
      <End
        player={player}
        label={loopWords.from}
        value={from}
        set={(at) => player.setPart(Math.min(at, to - 0.5), to)}
      />
      <End
        player={player}
        label={loopWords.to}
        value={to}
        ends
        set={(at) => player.setPart(from, Math.max(at, from + 0.5))}
      />
      <p role="status">{part === null ? '' : loopWords.part({ part, steps, first: part.first, round }, dance)}</p>
      <Joined
        on={wantsJoined && part === null && !some}
        can={following.can}
        set={(on) => player.change((session) => withJoined(session, on))}
      >
        {following.can ? loopWords.joined(following, dance) : loopWords.notJoined(following.why)}
      </Joined>
      <Choice
        label={loopWords.countIn}
        value={countIn}
        options={COUNT_IN_BARS.map((value) => ({ value, text: loopWords.countInText(value) }))}
        choose={(value) => player.change((session) => withCountIn(session, value))}
      />
    </fieldset>
  )
}

type EndProps = {
  readonly player: Player
  readonly label: string
  readonly value: number
  /** It is where the part ends. */
  readonly ends?: boolean
  readonly set: (at: number) => void
}

/** One end of the part, on the half-beat grid. */
function End({ player, label, value, ends = false, set }: EndProps) {
  const id = useId()
  const { schedule, dance, ideal, panels } = useStore(player.store, (state) => state.lesson.once)
  const { bar, count, part } = musicPlace(schedule, value)
  const said =
    ends && count === 1 && part < 1e-9 && bar > 1
      ? loopWords.endOfBar(bar - 1)
      : countWords({ schedule, dance, ideal, panels }, value)
  return (
    <label className="sheet-range" htmlFor={id}>
      {label}: {said}
      <input
        id={id}
        type="range"
        min={0}
        max={Math.ceil(schedule.length / schedule.grid) * schedule.grid}
        step={schedule.grid}
        value={value}
        aria-label={label}
        aria-valuetext={said}
        onChange={(event) => set(event.currentTarget.valueAsNumber)}
      />
    </label>
  )
}

type JoinedProps = {
  readonly on: boolean
  readonly can: boolean
  readonly set: (on: boolean) => void
  readonly children: ReactNode
}

function Joined({ on, can, set, children }: JoinedProps) {
  return (
    <>
      <label className="switch">
        <input type="checkbox" checked={on && can} disabled={!can} onChange={() => set(!on)} />
        {loopWords.join}
      </label>
      <p className="sheet-note">{children}</p>
    </>
  )
}
