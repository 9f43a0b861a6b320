import { useId, useRef, useState } from 'react'
import { useStore } from 'zustand'
import type { Conductor, SoundChoices } from '../conductor.ts'
import { secondsPerBeat } from '../dance/secondsPerBeat.ts'
import { clickFile } from '../export/clickFile.ts'
import { saveFile } from '../keep/saveFile.ts'
import type { Player } from '../player.ts'
import { ticksOf } from '../sound/ticksOf.ts'
import { labels } from '../words/labels.ts'
import { soundWords } from '../words/soundWords.ts'
import { Choice } from './Choice.tsx'
import { CountingChoice } from './CountingChoice.tsx'
import { InPlace } from './InPlace.tsx'
import { Sheet } from './Sheet.tsx'
import { soundLater } from './soundLater.ts'
import { TapDelay } from './TapDelay.tsx'
import type { Sound } from './useSound.ts'

type Props = { readonly player: Player; readonly sound: Sound }

/** What is heard, and how. It comes as soon as there is something to set. */
export function SoundSheet({ player, sound, close }: Props & { readonly close: () => void }) {
  return (
    <Sheet title={soundWords.title} closeLabel={labels.close} close={close}>
      <p role="status">
        {sound.conductor === null ? (
          soundWords.state(sound.state)
        ) : (
          <State player={player} sound={sound} conductor={sound.conductor} />
        )}
      </p>
      <Again sound={sound} />
      <Switch on={sound.state !== 'off'} word={soundWords.on} set={(on) => (on ? sound.wake() : sound.silence())} />
      {sound.conductor === null ? null : <Choices player={player} conductor={sound.conductor} />}
      {sound.conductor === null ? null : <TapDelay player={player} sound={sound} conductor={sound.conductor} />}
      {sound.conductor === null ? null : <ClickFiles player={player} conductor={sound.conductor} />}
      {sound.state === 'off' ? null : <p className="sheet-note">{soundWords.nothingHeard}</p>}
      <p className="sheet-note">{soundWords.care}</p>
    </Sheet>
  )
}

/** Whether anything can be heard at all. */
function State({ player, sound, conductor }: Props & { readonly conductor: Conductor }) {
  // Half beats go by the tempo, and the count by the dance.
  useStore(player.store, (state) => state.session.barsPerMinute)
  useStore(player.store, (state) => state.lesson)
  const { volume } = useStore(conductor.store)
  const { bar, beats, halves, count } = conductor.heard().choices
  const nothing = volume === 0 || (count === 'off' && !bar && !beats && !halves)
  return sound.state === 'sounding' && nothing ? soundWords.onForNothing : soundWords.state(sound.state)
}

/** Where the device does not sound yet. When it does, the keyboard is the sheet's. */
function Again({ sound }: { readonly sound: Sound }) {
  const hadKeys = useRef(false)
  return sound.state === 'waiting' ? (
    <InPlace key="again" hadKeys={hadKeys}>
      <button type="button" className="quiet-button" onClick={sound.wake}>
        {soundWords.again}
      </button>
    </InPlace>
  ) : (
    <InPlace key="nothing" hadKeys={hadKeys}>
      {null}
    </InPlace>
  )
}

type ChoicesProps = { readonly player: Player; readonly conductor: Conductor }

function Choices({ player, conductor }: ChoicesProps) {
  const id = useId()
  const bars = useStore(player.store, (state) => state.session.barsPerMinute)
  const lesson = useStore(player.store, (state) => state.lesson)
  useStore(player.store, (state) => state.session.counting)
  const choices = useStore(conductor.store)
  const set = (next: Partial<SoundChoices>) => conductor.set(next)
  const usual = choices.halves === null
  const heard = conductor.heard().choices
  const said = ticksOf(lesson, heard).flatMap(({ say }) => say ?? [])
  return (
    <>
      <label className="sheet-range" htmlFor={id}>
        {soundWords.volume}
        <input
          id={id}
          type="range"
          min={0}
          max={1}
          step={0.05}
          value={choices.volume}
          onChange={(event) => set({ volume: event.currentTarget.valueAsNumber })}
        />
      </label>
      <fieldset className="sheet-group">
        <legend>{soundWords.clicks}</legend>
        <Switch on={choices.beats} word={soundWords.beats} set={(beats) => set({ beats })} />
        <Switch on={choices.bar} word={soundWords.bar} set={(bar) => set({ bar })} />
        <Choice
          label={soundWords.halves}
          value={usual ? 'usual' : choices.halves ? 'on' : 'off'}
          options={(['usual', 'on', 'off'] as const).map((value) => ({ value, text: soundWords.halvesText[value] }))}
          choose={(value) => set({ halves: value === 'usual' ? null : value === 'on' })}
        />
        <p className="sheet-note">{soundWords.halvesNow(labels.barsPerMinute(bars), heard.halves, choices.on)}</p>
      </fieldset>
      <Choice
        label={soundWords.count}
        value={choices.count}
        options={(['off', 'counting', 'steps'] as const).map((value) => ({ value, text: soundWords.counts[value] }))}
        choose={(count) => set({ count })}
      />
      {choices.count === 'off' ? null : (
        <>
          <CountingChoice player={player} label={labels.counting} />
          <p className="sheet-note">{heard.count === 'off' ? soundWords.noVoice : soundWords.said(said)}</p>
        </>
      )}
      <label className="sheet-range" htmlFor={`${id}-offset`}>
        {soundWords.later}
        <input
          id={`${id}-offset`}
          type="range"
          min={0}
          max={soundLater.most}
          step={soundLater.step}
          value={choices.offset}
          onChange={(event) => set({ offset: event.currentTarget.valueAsNumber })}
        />
      </label>
      <p className="sheet-note">{soundWords.offset(conductor.reported(), choices.offset)}</p>
      {conductor.passesSwitch ? (
        <Switch
          on={choices.throughSwitch}
          word={soundWords.throughSwitch}
          set={(throughSwitch) => set({ throughSwitch })}
        />
      ) : null}
    </>
  )
}

/** Loops in a file: some minutes of most figures. */
const ROUNDS = 16

/** The same for other equipment. */
function ClickFiles({ player, conductor }: { readonly player: Player; readonly conductor: Conductor }) {
  const save = (kind: 'wav' | 'mid'): void => {
    const { lesson, session } = player.store.getState()
    const { choices, voice } = conductor.heard()
    const file = clickFile(kind, lesson, session.barsPerMinute, choices, voice, ROUNDS)
    saveFile(file)
    setSaved(soundWords.saved(file.name))
  }
  const { dance, round } = useStore(player.store, (state) => state.lesson)
  const barsPerMinute = useStore(player.store, (state) => state.session.barsPerMinute)
  // What is in the file follows all of it.
  useStore(conductor.store)
  const [saved, setSaved] = useState('')
  return (
    <fieldset className="sheet-group">
      <legend>{soundWords.files}</legend>
      <p className="sheet-note">
        {soundWords.inFile({
          ...conductor.heard().choices,
          ...{ loops: ROUNDS, tempo: labels.barsPerMinute(barsPerMinute) },
          seconds: ROUNDS * round * secondsPerBeat(dance, barsPerMinute),
        })}
      </p>
      <button type="button" className="quiet-button" onClick={() => save('wav')}>
        {soundWords.wav}
      </button>{' '}
      <button type="button" className="quiet-button" onClick={() => save('mid')}>
        {soundWords.midi}
      </button>
      <p role="status">{saved}</p>
    </fieldset>
  )
}

type SwitchProps = { readonly on: boolean; readonly word: string; readonly set: (on: boolean) => void }

function Switch({ on, word, set }: SwitchProps) {
  return (
    <label className="switch">
      <input type="checkbox" checked={on} onChange={() => set(!on)} />
      {word}
    </label>
  )
}
