import type { Dance } from '../dance/dance.ts'
import { dances } from '../dance/dances.ts'
import { beatValue, type Radians } from '../units.ts'
import { countText } from './countText.ts'
import type { Action, Checkpoint, Direction, Figure, OwnMoments } from './figure.ts'
import { CURRENT_VERSION, migrated } from './migrations.ts'
import { alignmentText } from './readAlignment.ts'
import { momentKeys, readMoments } from './readMoments.ts'
import { riseText, sizeText, sourceText, swayText, turnText, weightText } from './texts.ts'
import { usualWeights } from './usualWeights.ts'
import { writeTimings } from './writeTimings.ts'
import { type Written, writeYaml } from './writeYaml.ts'

type Mapping = { [key: string]: Written }

/** Directions that came with version 2. */
const NEW_DIRECTIONS: readonly Direction[] = [
  ...(['slightly forward', 'slightly back', 'slightly side', 'close slightly forward', 'close slightly back'] as const),
  ...(['half close', 'lock in front', 'lock behind'] as const),
]

/** @param called in 1/48 beat from count 1 of the first bar */
function momentsOf(moments: OwnMoments, called: number, dance: Dance): Mapping {
  const written: { [key: string]: string } = {}
  for (const key of momentKeys) {
    const moment = moments[key]
    if (moment === undefined) continue
    const { count } = countText(called + moment, dance.beatsPerBar)
    // A count is the nearest of its name: one further off has none.
    if (readMoments({ [key]: count }, called, dance).moments[key] !== moment) {
      throw new RangeError(`no count says that an action ${key} ${moment / beatValue(1)} beats from its own`)
    }
    written[key] = count
  }
  return written
}

function actionOf(action: Action, called: number, dance: Dance): Written {
  const { direction, size, turn, footTurn, placed, position, leading, alignment, weight, footwork, note } = action
  const more: Mapping = {
    ...(size === null ? {} : { size: sizeText(size) }),
    ...(turn === 0 ? {} : { turn: turnText(turn) }),
    ...(footTurn === null ? {} : { [footTurn.kind]: turnText(footTurn.by) }),
    ...(placed === null ? {} : { placed }),
    ...(position === null ? {} : { position }),
    ...(leading === null ? {} : { leading: `${leading} side` }),
    ...(alignment === null ? {} : { alignment: alignmentText(alignment) }),
    ...(weight === usualWeights[direction] ? {} : { weight: weightText(weight) }),
    ...momentsOf(action.moments, called, dance),
    ...(footwork === '' ? {} : { footwork }),
    ...(note === '' ? {} : { note }),
  }
  return Object.keys(more).length === 0 ? direction : { direction, ...more }
}

/** Entries with their bar only where the count alone is not the next of its name, or the nearest to the start. */
function trackOf(
  track: readonly Checkpoint[],
  called: number,
  { beatsPerBar }: Dance,
  to: (value: number) => string,
): readonly Written[] {
  const length: number = beatValue(beatsPerBar)
  return track.map(({ at, value }, index) => {
    const before = track[index - 1]?.at
    const isNear = before === undefined ? at * 2 <= length && at * 2 > -length : at <= before + length
    const { bar, count } = countText(called + at, beatsPerBar)
    if (!isNear && bar < 0) throw new RangeError(`no count says bar ${bar}`)
    return { at: isNear ? count : `bar ${bar} ${count}`, to: to(value) }
  })
}

function tracksOf({ tracks }: Figure, called: number, dance: Dance): Mapping {
  const written = {
    'body turn': trackOf(tracks.bodyTurn, called, dance, (value) => turnText(value as Radians)),
    'rise and fall': trackOf(tracks.rise, called, dance, riseText),
    sway: trackOf(tracks.sway, called, dance, swayText),
  }
  return Object.fromEntries(Object.entries(written).filter(([, track]) => track.length > 0))
}

/** "1–8": a dash to a count that is not the next one; 4-1 is older. */
const hasRun = (text: string): boolean =>
  [...text.matchAll(/(\d)\s*[-–]\s*(\d{1,2})/g)].some(([, from, to]) => Number(to) > Number(from) + 1)

/** Whether version 1 could not say it: a key of its own, a direction, a way of standing, or a way to write a timing. */
function needsVersion2({ starts, actions, timings }: Figure, written: Mapping): boolean {
  return (
    migrated(written, 1).aside.length > 0 ||
    starts?.way === 'pointing' ||
    timings.some(({ text }) => /[×x]|^\s*[&a]/i.test(text) || hasRun(text)) ||
    actions.some(({ direction }) => NEW_DIRECTIONS.includes(direction))
  )
}

/**
 * A figure as the text of a new file, in the lowest version that holds it. `parseFigure` gives the same figure back.
 * @throws RangeError when something in it has no words (a moment off the counts, a sway between the five)
 */
export function writeFigure(figure: Figure): string {
  const dance = dances[figure.dance]
  const { starts, ends, freeFoot, convention, stepsSource, about } = figure
  const [timing] = figure.timings
  const timings = writeTimings(figure)
  const first: number = beatValue(timing.firstCount - 1)
  let called = first
  const actions = figure.actions.map((action, index) => {
    const now = called
    called += timing.values[index] ?? 0
    return actionOf(action, now, dance)
  })
  const written: Mapping = {
    title: figure.title,
    dance: figure.dance,
    role: figure.role,
    'first foot': figure.firstFoot,
    ...(starts === null ? {} : { starts: alignmentText(starts) }),
    ...(ends === null ? {} : { ends: alignmentText(ends) }),
    ...(freeFoot === null ? {} : { 'free foot': freeFoot }),
    ...(convention === dance.convention ? {} : { convention }),
    ...timings,
    ...(stepsSource === null ? {} : { 'steps source': sourceText(stepsSource) }),
    ...(about === '' ? {} : { about }),
    actions,
    ...tracksOf(figure, first, dance),
  }
  return writeYaml({ overfoot: String(needsVersion2(figure, written) ? CURRENT_VERSION : 1), ...written })
}
