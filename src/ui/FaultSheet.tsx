import './faults.css'
import { type MouseEvent, useEffect, useMemo, useRef, useState } from 'react'
import { useStore } from 'zustand'
import type { Player } from '../player.ts'
import { tones } from '../scene/tones.ts'
import { MOST_PANELS, withPanel, withPanelLess, withPanelMore } from '../session/session.ts'
import { changes } from '../transfer/changes.ts'
import { amountOf, type Fault, type FaultKind, faults, wayOf } from '../transfer/faults.ts'
import type { Way } from '../transfer/way.ts'
import { faultWords } from '../words/faultWords.ts'
import { labels } from '../words/labels.ts'
import { numbered } from '../words/numbered.ts'
import { shownLine } from '../words/shownLine.ts'
import { showWords } from '../words/showWords.ts'
import { wayShort } from '../words/wayName.ts'
import { FaultDetails } from './FaultDetails.tsx'
import { FaultPicture } from './FaultPicture.tsx'
import { Icon } from './Icon.tsx'
import { Sheet } from './Sheet.tsx'
import { ToneMark } from './ToneMark.tsx'

type Props = {
  readonly player: Player
  /** The picture that is chosen for: an index into the panels. */
  readonly panel: number
  readonly choosePanel: (panel: number) => void
  readonly close: () => void
  readonly openSlow: () => void
  readonly openNumbers: () => void
}

const GROUPS: readonly Fault['of'][] = ['timing', 'weight', 'rhythm', 'dynamics']

/** What goes wrong in each picture: every fault that there is, those greyed that this figure cannot have. */
export function FaultSheet({ player, panel: wanted, choosePanel, close, openSlow, openNumbers }: Props) {
  const panels = useStore(player.store, (state) => state.session.panels)
  const order = useStore(player.store, (state) => state.session.order)
  const lesson = useStore(player.store, (state) => state.lesson)
  const names = useStore(player.store, (state) => state.session.names)
  const panel = Math.min(wanted, panels.length - 1)
  const way: Way = panels[panel]?.way ?? { kind: 'in time' }
  const toned = tones(panels.map((one) => one.way.kind))
  const chips = numbered(panels.map((one) => wayShort(one.way.kind)))
  const place = Math.max(0, order.indexOf(panel))
  /** A fault that the figure can have and no picture shows yet. */
  const another = (): FaultKind =>
    faults.find(
      ({ kind }) =>
        !panels.some((one) => one.way.kind === kind) && changes(lesson.schedule, wayOf(kind), lesson.shortest),
    )?.kind ?? 'late'
  const add = (): void => {
    player.change((session) => withPanelMore(session, wayOf(another())))
    choosePanel(panels.length)
  }
  const takeAway = (event: MouseEvent): void => {
    keepFocus(event)
    player.change((session) => withPanelLess(session, panel))
    choosePanel(Math.max(1, panel - 1))
  }
  if (!names) {
    return (
      <Sheet title={faultWords.pictures} closeLabel={labels.close} close={close}>
        <p className="sheet-note">{showWords.namesAreOff}</p>
      </Sheet>
    )
  }
  return (
    <Sheet title={faultWords.title(place)} closeLabel={labels.close} close={close}>
      <fieldset className="sheet-group fault-panels">
        <legend>{faultWords.pictures}</legend>
        {panels.map(({ id }, index) => (
          <button
            key={id}
            type="button"
            className="toggle fault-panel"
            aria-pressed={index === panel}
            onClick={() => choosePanel(index)}
          >
            <ToneMark tone={toned[index] ?? 'in time'} />
            {chips[index]}
          </button>
        ))}
        <button
          type="button"
          className="toggle fault-panel"
          aria-disabled={panels.length >= MOST_PANELS}
          onClick={() => panels.length < MOST_PANELS && add()}
        >
          <Icon name="more" />
          {faultWords.more}
        </button>
      </fieldset>
      {panel === 0 || way.kind === 'in time' ? (
        <p className="sheet-note">{faultWords.plan}</p>
      ) : (
        <>
          <button type="button" className="fault-demo fault-less" onClick={takeAway}>
            {faultWords.less(chips[panel] ?? '')}
          </button>
          <FaultList player={player} panel={panel} way={way} openNumbers={openNumbers} />
        </>
      )}
      <button type="button" className="quiet-button" onClick={openSlow}>
        {showWords.slow}
      </button>
      <p className="sheet-note">{faultWords.teacher}</p>
    </Sheet>
  )
}

type ListProps = {
  readonly player: Player
  readonly panel: number
  readonly way: Way
  readonly openNumbers: () => void
}

/** A button that goes away gives the keyboard back to the sheet. */
const keepFocus = ({ currentTarget }: MouseEvent): void => {
  if (currentTarget instanceof HTMLElement) currentTarget.closest<HTMLElement>('.sheet')?.focus({ preventScroll: true })
}

function FaultList({ player, panel, way, openNumbers }: ListProps) {
  const { schedule, shortest } = useStore(player.store, (state) => state.lesson)
  const canBe = useMemo(
    () => new Set(faults.flatMap(({ kind }) => (changes(schedule, wayOf(kind), shortest) ? [kind] : []))),
    [schedule, shortest],
  )
  const [demoOf] = useState(
    () => new Map(faults.map(({ kind, demo }) => [kind, player.figures.find(({ id }) => id.startsWith(demo))])),
  )
  const chosenRow = useRef<HTMLDivElement>(null)
  // What is chosen is seen at once, in a list that is longer than a phone.
  useEffect(() => chosenRow.current?.scrollIntoView({ block: 'nearest' }), [])
  return GROUPS.map((group) => (
    <fieldset className="sheet-group" key={group}>
      <legend>{faultWords.group(group)}</legend>
      {faults
        .filter(({ of }) => of === group)
        .map((fault) => {
          const { kind } = fault
          const chosen = way.kind === kind
          const usual = wayOf(kind)
          const possible = chosen ? changes(schedule, way, shortest) : canBe.has(kind)
          const demo = demoOf.get(kind)
          return (
            <div className="fault" key={kind} ref={chosen ? chosenRow : null}>
              <label className="switch">
                <input
                  type="radio"
                  name="fault"
                  checked={chosen}
                  disabled={!possible && !chosen}
                  onChange={() => player.change((session) => withPanel(session, panel, usual))}
                />
                {demo === undefined ? null : <FaultPicture figure={demo} kind={kind} />}
                <span>
                  {wayShort(kind)}
                  {possible ? null : <span className="fault-not-here">{faultWords.notHere(kind)}</span>}
                </span>
              </label>
              {possible || demo === undefined ? null : (
                <button
                  type="button"
                  className="fault-demo"
                  onClick={(event) => {
                    keepFocus(event)
                    player.choose(demo.id)
                    player.change((session) => withPanel(session, panel, usual))
                  }}
                >
                  {faultWords.demo(shownLine(demo.title))}
                </button>
              )}
              {chosen ? (
                <FaultDetails
                  player={player}
                  panel={panel}
                  fault={fault}
                  way={way}
                  amount={amountOf(way)}
                  set={(next) => player.change((session) => withPanel(session, panel, next))}
                  demo={demo}
                  openNumbers={openNumbers}
                />
              ) : null}
            </div>
          )
        })}
    </fieldset>
  ))
}
