import { useId } from 'react'
import { useStore } from 'zustand'
import type { Role } from '../figure/figure.ts'
import type { Player } from '../player.ts'
import { tones } from '../scene/tones.ts'
import type { Seen } from '../scene/view.ts'
import { withOpposite, withSeen } from '../session/session.ts'
import { showWords } from '../words/showWords.ts'
import { wayName, wayShort } from '../words/wayName.ts'
import { Icon } from './Icon.tsx'
import { Sheet } from './Sheet.tsx'
import { ToneMark } from './ToneMark.tsx'
import type { ThemeChoice } from './useTheme.ts'

const SEEN: readonly Seen[] = ['dancer', 'class', 'mirror', 'room']
const ROLES: readonly Role[] = ['leader', 'follower']
const THEMES: readonly ThemeChoice[] = ['system', 'light', 'dark']

type Props = {
  readonly player: Player
  readonly theme: { readonly choice: ThemeChoice; readonly choose: (choice: ThemeChoice) => void }
  readonly close: () => void
  readonly openTable: () => void
  readonly openSlow: () => void
}

/** Everything that decides how a figure is shown, and nothing that decides how it is danced. */
export function ShowSheet({ player, theme, close, openTable, openSlow }: Props) {
  const seen = useStore(player.store, (state) => state.session.seen)
  const { figure, written } = useStore(player.store, (state) => state.lesson)
  const names = useStore(player.store, (state) => state.session.names)
  return (
    <Sheet title={showWords.show} closeLabel={showWords.close} close={close}>
      {names ? <Pictures player={player} /> : <p className="sheet-note">{showWords.namesAreOff}</p>}
      <Options
        legend={showWords.seen}
        value={seen}
        options={SEEN.map((one) => [one, showWords.seenName(one)] as const)}
        choose={(value) => player.change((session) => withSeen(session, value))}
      />
      <Options
        legend={showWords.part}
        value={figure.role}
        options={ROLES.map((role) => [role, showWords.partName(role)] as const)}
        choose={(role) => player.change((session) => withOpposite(session, role !== written.role))}
      />
      {figure === written ? null : <p className="sheet-note">{showWords.opposite(written)}</p>}
      <Options
        legend={showWords.colours}
        value={theme.choice}
        options={THEMES.map((one) => [one, showWords.colourNames[one]] as const)}
        choose={theme.choose}
      />
      <button type="button" className="quiet-button" onClick={openSlow}>
        {showWords.slow}
      </button>
      {names ? (
        <button type="button" className="quiet-button" title={showWords.tableHint} onClick={openTable}>
          {showWords.table}
        </button>
      ) : null}
    </Sheet>
  )
}

/** Which panels, in which order: those shown first, as they stand. */
function Pictures({ player }: { readonly player: Player }) {
  const panels = useStore(player.store, (state) => state.session.panels)
  const order = useStore(player.store, (state) => state.session.order)
  const toned = tones(panels.map(({ way }) => way.kind))
  const hidden = panels.flatMap((_, index) => (order.includes(index) ? [] : [index]))
  const swap = (place: number, other: number): void => {
    const next = [...order]
    ;[next[place], next[other]] = [order[other] as number, order[place] as number]
    player.setOrder(next)
  }
  return (
    <fieldset className="sheet-group">
      <legend>{showWords.pictures}</legend>
      {[...order, ...hidden].map((panel) => {
        const way = panels[panel]?.way
        if (way === undefined) return null
        const name = wayShort(way.kind)
        const place = order.indexOf(panel)
        const shown = place >= 0
        const canGoRight = shown && place < order.length - 1
        return (
          <div className="picture-row" key={panel}>
            <label className="switch">
              <input
                type="checkbox"
                checked={shown}
                disabled={shown && order.length === 1}
                onChange={() => player.setOrder(shown ? order.filter((one) => one !== panel) : [...order, panel])}
              />
              <ToneMark tone={toned[panel] ?? 'in time'} />
              <span title={wayName(way)}>{name}</span>
            </label>
            <button
              type="button"
              className="icon-button"
              aria-label={showWords.toTheLeft(name)}
              aria-disabled={place < 1}
              onClick={() => place >= 1 && swap(place, place - 1)}
            >
              <Icon name="left" />
            </button>
            <button
              type="button"
              className="icon-button"
              aria-label={showWords.toTheRight(name)}
              aria-disabled={!canGoRight}
              onClick={() => canGoRight && swap(place, place + 1)}
            >
              <Icon name="right" />
            </button>
          </div>
        )
      })}
    </fieldset>
  )
}

type OptionsProps<Value extends string> = {
  readonly legend: string
  readonly value: Value
  readonly options: readonly (readonly [value: Value, text: string])[]
  readonly choose: (value: Value) => void
}

/** One of a few, all of them in sight. */
function Options<Value extends string>({ legend, value, options, choose }: OptionsProps<Value>) {
  const name = useId()
  return (
    <fieldset className="sheet-group">
      <legend>{legend}</legend>
      {options.map(([one, text]) => (
        <label className="switch" key={one}>
          <input type="radio" name={name} checked={one === value} onChange={() => choose(one)} />
          {text}
        </label>
      ))}
    </fieldset>
  )
}
