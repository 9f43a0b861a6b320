import { readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import type { Action, Figure, Foot, Role } from '../../src/figure/figure.ts'
import { naturalOpposite } from '../../src/figure/naturalOpposite.ts'
import { parseFigure } from '../../src/figure/parse.ts'
import { bodyWithFeet } from '../../src/pose/body.ts'
import { layOutFloor } from '../../src/pose/floor.ts'
import { type Basic, basicsTable } from './basicsTable.ts'

/**
 * The rule of the natural opposite against the charts of `basics/`, which hold both partners. What a follower's chart
 * says is mostly from memory (each file names its source, `basicsTable.ts` where its numbers come from) and for a teacher
 * to check: these tests hold the rule to charts as we have them.
 */
const folder = new URL('basics/', import.meta.url)

/**
 * Where the rule has to give the chart, whole, by the trade: neither partner turns, or both turn alike on the same
 * steps, or (tango) the one who turns is the follower, into promenade and out of it.
 */
const AGREE: readonly string[] = [
  // No turn: changes, walks, the Latin basics' replaced steps and chassés.
  'waltz-right-closed-change',
  'waltz-left-closed-change',
  'foxtrot-feather-step',
  'foxtrot-three-step',
  'cha-cha-basic',
  // A turn that the couple makes as one: an eighth with the side steps, with each 1, a quarter before each of two steps.
  'rumba-basic',
  'samba-natural-basic',
  'viennese-waltz-natural-turn',
  // Promenade: the follower's quarter.
  'tango-walks-and-link',
  'tango-closed-promenade',
]

const SPLIT =
  'who is on the outside of a turn makes it in two parts, who is on the inside in one, and the body completes it (Dancing Tid-bits no. 182 for the quarter turn; the rest from memory)'

/** Where the follower's chart is another, on which steps, and why. */
const DIFFER: Readonly<Record<string, { readonly steps: readonly number[]; readonly because: string }>> = {
  'waltz-natural-turn': { steps: [2, 3, 5, 6], because: SPLIT },
  'waltz-reverse-turn': { steps: [2, 3, 5, 6], because: SPLIT },
  'quickstep-progressive-chasse': { steps: [2, 3], because: SPLIT },
  'quickstep-quarter-turn-right': {
    steps: [2, 3, 4],
    because: `${SPLIT}; the last step is diagonally forward, not side and slightly forward`,
  },
  'foxtrot-reverse-turn': { steps: [2, 3, 5, 6], because: `the follower’s second step is a heel turn; then ${SPLIT}` },
  'waltz-whisk': {
    steps: [2, 3],
    because: 'the follower opens with the second step, diagonally back; the chart names promenade on the third only',
  },
  'waltz-chasse-from-promenade': {
    steps: [2, 3],
    because: 'the follower closes in two eighths, on 2 and on &; the rule makes the quarter at once',
  },
  'jive-fallaway-rock': {
    steps: [1],
    because:
      'both rock back, in fallaway, which the leader’s chart does not say of the step; said, the direction is kept',
  },
}

const names = Object.keys(basicsTable)
const couples = [...new Set(names.map((name) => name.replace(/-(leader|follower)$/, '')))]

function read(couple: string, role: Role): Figure {
  const name = `${couple}-${role}.figure.yaml`
  const result = parseFigure(readFileSync(new URL(name, folder), 'utf8'), name)
  if (!result.ok) throw new Error(JSON.stringify(result.problems))
  return result.figure
}
const basic = (couple: string, role: Role): Basic => basicsTable[`${couple}-${role}`] as Basic

/** "side and slightly back" is a side step, "close slightly forward" a close; diagonals are their own. */
const kindOf = ({ direction }: Action): string =>
  direction.replace(/^slightly /, '').replace(/( and)? slightly \w+$/, '')

type Step = {
  readonly foot: Foot
  readonly kind: string
  /** −1 to the left, 1 to the right, between the steps or on a heel. */
  readonly turns: number
  /** Where the foot points, in eighths of a turn, 0 to 7. */
  readonly points: number
}

const eighth = (eighths: number): number => ((Math.round(eighths) % 8) + 8) % 8

function floorOf(figure: Figure) {
  const carried = figure.actions.map(({ weight }) => weight)
  const touches = figure.actions.map(() => null)
  return layOutFloor(figure, carried, touches, bodyWithFeet(1))
}

function stepsOf(figure: Figure): readonly Step[] {
  return floorOf(figure).actions.map(({ foot, place }, index) => {
    const action = figure.actions[index] as Action
    const turns = Math.sign(action.turn + (action.footTurn?.by ?? 0))
    return { foot, kind: kindOf(action), turns, points: eighth(place.heading / (Math.PI / 4)) }
  })
}

/** Numbers, from 1, of the steps on which the rule and the chart differ. */
function differing(couple: string, from: Role, to: Role): readonly number[] {
  const made = stepsOf(naturalOpposite(read(couple, from)))
  const chart = stepsOf(read(couple, to))
  expect(made).toHaveLength(chart.length)
  return made.flatMap((step, index) => (JSON.stringify(step) === JSON.stringify(chart[index]) ? [] : [index + 1]))
}

test('each couple of the basics is said to agree or to differ, and not both', () => {
  expect([...AGREE, ...Object.keys(DIFFER)].sort()).toEqual([...couples].sort())
})

describe('naturalOpposite(leader) gives foot, direction, way of turn and alignment of every step of the follower', () => {
  test.each(AGREE)('%s', (couple) => {
    expect(differing(couple, 'leader', 'follower')).toEqual([])
  })

  test.each(AGREE)('%s, and the leader’s from the follower’s', (couple) => {
    expect(differing(couple, 'follower', 'leader')).toEqual([])
  })
})

describe('the follower’s chart differs where the trade’s does', () => {
  test.each(Object.entries(DIFFER))('%s', (couple, { steps, because }) => {
    expect(differing(couple, 'leader', 'follower'), because).toEqual(steps)
  })

  test('said to be in fallaway, the jive’s rock goes back for both', () => {
    const leader = read('jive-fallaway-rock', 'leader')
    const [rock, ...rest] = leader.actions as [Action, ...Action[]]
    const said: Figure = { ...leader, actions: [{ ...rock, position: 'fallaway' }, ...rest] }
    const kinds = (figure: Figure) => stepsOf(figure).map(({ foot, kind }) => `${foot} ${kind}`)
    expect(kinds(naturalOpposite(said))).toEqual(kinds(read('jive-fallaway-rock', 'follower')))
  })
})

describe.each(couples)('%s, differing or not', (couple) => {
  const made = naturalOpposite(read(couple, 'leader'))
  const chart = read(couple, 'follower')

  test('the same foot acts on each step, at the same time', () => {
    expect(stepsOf(made).map(({ foot }) => foot)).toEqual(stepsOf(chart).map(({ foot }) => foot))
    expect(made.timings[0].values).toEqual(chart.timings[0].values)
  })

  test('starts and ends where the chart does, the way that was typed from it', () => {
    const { starts, ends } = basic(couple, 'follower')
    const { start, actions } = floorOf(made)
    expect(eighth(start[start.standing].heading / (Math.PI / 4))).toBe(eighth(starts))
    expect(eighth((actions.at(-1)?.facing ?? Number.NaN) / (Math.PI / 4))).toBe(eighth(ends))
    expect(made.starts?.to).toBe(chart.starts?.to)
  })
})
