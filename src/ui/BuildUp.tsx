import { useRef, useState } from 'react'
import { useStore } from 'zustand'
import { speedOf } from '../dance/speed.ts'
import type { Player } from '../player.ts'
import type { Practice } from '../practice.ts'
import { type LadderWishes, newLadder, rungOf, shortestStep } from '../session/ladder.ts'
import { ladderWords } from '../words/ladderWords.ts'
import { Choice } from './Choice.tsx'
import { Climb } from './Climb.tsx'
import { ClimbStatus } from './ClimbStatus.tsx'
import { GETS_KEYS, InPlace } from './InPlace.tsx'

type Props = {
  readonly player: Player
  readonly practice: Practice
  /** Told when it climbs. */
  readonly begun: () => void
}

/** Building up from slow to full tempo: how, and then where one is. */
export function BuildUp({ player, practice, begun }: Props) {
  const ladder = useStore(practice.store, (state) => state.ladder)
  // What was wished for one figure is not wished for the next.
  const figure = useStore(player.store, (state) => state.session.figure)
  const hadKeys = useRef(false)
  return (
    <fieldset className="sheet-group practice-group">
      <legend>{ladderWords.title}</legend>
      <ClimbStatus practice={practice} />
      {ladder === null ? (
        <InPlace key={figure} hadKeys={hadKeys}>
          <Before player={player} practice={practice} begun={begun} />
        </InPlace>
      ) : (
        <InPlace key="climb" hadKeys={hadKeys}>
          <Climb practice={practice} ladder={ladder} />
        </InPlace>
      )}
    </fieldset>
  )
}

const PER_CENT = (low: number, high: number): number[] =>
  Array.from({ length: Math.round((high - low) / 5) + 1 }, (_, k) => (low + 5 * k) / 100)
// What is offered; own judgement.
const FROM = PER_CENT(30, 95)
const TO = PER_CENT(60, 125)
const STEPS = [2, 3, 4, 5, 6, 8, 10, 12]
const LOOPS = [1, 2, 3, 4, 6, 8, 12, 16]

/** From here on it is no slow tempo, for rounding. */
const FULL = 1 - 1e-9

/** What is offered, with what is set. */
const offered = (choices: readonly number[], value: number): number[] =>
  [...choices.filter((one) => Math.abs(one - value) > 1e-9), value].sort((a, b) => a - b)

/** What can be wished for. */
function Before({ player, practice, begun: told }: Props) {
  const { dance, once } = useStore(player.store, (state) => state.lesson)
  const bars = useStore(player.store, (state) => state.session.barsPerMinute)
  const countIn = useStore(player.store, (state) => state.session.countIn)
  const left = practice.left()
  const speed = speedOf(dance, bars)
  // Whoever has set it slow already begins there.
  const usual = newLadder(dance, {
    shortest: shortestStep(once.schedule),
    ...(speed < FULL ? { from: speed } : {}),
  })
  const [wishes, setWishes] = useState<LadderWishes>({})
  // What was begun goes on as it was; what was left at its first speed begins at the tempo at hand.
  const begun = left !== null && left.rung > 0 ? left : null
  const plan = newLadder(dance, { ...usual, ...begun, ...wishes, ...(countIn > 0 ? { countIn } : {}) })
  const wish = (next: LadderWishes) => setWishes((former) => ({ ...former, ...next }))
  const choices = [
    { key: 'from', label: ladderWords.from, offers: FROM.filter((from) => from < plan.to), text: ladderWords.speed },
    { key: 'to', label: ladderWords.to, offers: TO.filter((to) => to > plan.from), text: ladderWords.speed },
    { key: 'steps', label: ladderWords.steps, offers: STEPS, text: ladderWords.stepsText },
    { key: 'loops', label: ladderWords.loops, offers: LOOPS, text: ladderWords.loopsText },
  ] as const
  const isWished = Object.keys(wishes).length > 0
  const again = begun !== null && !isWished
  const start = (wanted: LadderWishes, anew: boolean): void => {
    practice.start(wanted, anew)
    told()
  }
  return (
    <>
      <p>{again ? ladderWords.remembered(rungOf({ ...plan, rung: begun.rung })) : ladderWords.plan(plan)}</p>
      <button type="button" className="quiet-button practice-start" onClick={() => start(plan, !again)} {...GETS_KEYS}>
        {again ? ladderWords.goOn : ladderWords.start}
      </button>
      {again ? (
        <button type="button" className="quiet-button" onClick={() => start({ ...begun }, true)}>
          {ladderWords.fromStart}
        </button>
      ) : null}
      <p className="sheet-note">{ladderWords.caution(plan.from)}</p>
      <details onToggle={({ currentTarget }) => currentTarget.scrollIntoView({ block: 'nearest' })}>
        <summary>{ladderWords.otherwise}</summary>
        <div className="sheet-choices">
          {choices.map(({ key, label, offers, text }) => (
            <Choice
              key={key}
              label={label}
              value={plan[key]}
              options={offered(offers, plan[key]).map((value) => ({ value, text: text(value) }))}
              choose={(value) => wish({ [key]: value })}
            />
          ))}
        </div>
        <label className="switch">
          <input type="checkbox" checked={plan.onTap} onChange={() => wish({ onTap: !plan.onTap })} />
          {ladderWords.onTap}
        </label>
      </details>
    </>
  )
}
