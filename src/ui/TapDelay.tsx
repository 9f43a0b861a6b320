import { useRef } from 'react'
import { useStore } from 'zustand'
import { tapDelay } from '../clock/tapDelay.ts'
import type { Conductor } from '../conductor.ts'
import type { Player } from '../player.ts'
import { delayWords } from '../words/delayWords.ts'
import { SettledStatus } from './SettledStatus.tsx'
import { soundLater } from './soundLater.ts'
import { TapButton } from './TapButton.tsx'
import type { Sound } from './useSound.ts'
import { testTempo, useTapDelay } from './useTapDelay.ts'

type Props = { readonly player: Player; readonly sound: Sound; readonly conductor: Conductor }

/** The delay of a loudspeaker without a cable, by tapping on what is heard. It adds to what the device reports. */
export function TapDelay({ player, sound, conductor }: Props) {
  const dance = useStore(player.store, (state) => state.lesson.dance)
  const test = useTapDelay(player, conductor)
  const tapButton = useRef<HTMLButtonElement>(null)
  return (
    <fieldset className="sheet-group tap-delay">
      <legend>{delayWords.title}</legend>
      <p className="sheet-note">{delayWords.intro(testTempo(player) * dance.beatsPerBar)}</p>
      {test.runs ? (
        <>
          <TapButton
            word={delayWords.tap}
            tap={(at) => sound.state === 'sounding' && test.tap(at)}
            button={tapButton}
          />
          <Found
            player={player}
            conductor={conductor}
            sounds={sound.state === 'sounding'}
            test={test}
            set={(delay) => {
              // What was pressed goes away: the keyboard is where it is tapped on, to check it.
              tapButton.current?.focus()
              test.forget()
              conductor.set({ offset: delay })
            }}
          />
        </>
      ) : null}
      <button
        type="button"
        className="quiet-button"
        onClick={() => {
          if (test.runs) {
            test.end()
            return
          }
          // Browsers allow sound within a press only.
          const { on } = conductor.store.getState()
          sound.wake()
          test.start(on)
        }}
      >
        {test.runs ? delayWords.stop : delayWords.start}
      </button>
    </fieldset>
  )
}

type FoundProps = {
  readonly player: Player
  readonly conductor: Conductor
  readonly sounds: boolean
  readonly test: ReturnType<typeof useTapDelay>
  /** @param delay seconds */
  readonly set: (delay: number) => void
}

function Found({ player, conductor, sounds, test, set }: FoundProps) {
  const isSetTo = useStore(conductor.store, (choices) => choices.offset)
  if (!sounds) return <p role="status">{delayWords.silent}</p>
  const found = tapDelay(test.taps, player.clock().secondsPerBeat, isSetTo)
  if (found.kind === 'more') {
    const isSet = test.taps.length === 0 && isSetTo > 0
    return <SettledStatus text={isSet ? delayWords.isSet(isSetTo) : delayWords.more(found.taps)} />
  }
  if (found.kind === 'uneven') return <SettledStatus text={delayWords.uneven} />
  const { most, step } = soundLater
  const delay = Math.min(most, Math.max(0, Math.round(found.delay / step) * step))
  return (
    <>
      <SettledStatus text={delayWords.found(delay, found.spread)} />
      {found.delay > most + step / 2 ? <p className="sheet-note">{delayWords.most(most)}</p> : null}
      <p className="sheet-note">{delayWords.early}</p>
      <button type="button" className="quiet-button" onClick={() => set(delay)}>
        {delayWords.set(delay)}
      </button>
    </>
  )
}
