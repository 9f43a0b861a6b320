import { describe, expect, test } from 'vitest'
import type { FootTurn } from '../../src/figure/figure.ts'
import { lessonOf } from '../../src/session/lesson.ts'
import { newSession } from '../../src/session/session.ts'
import { beat, radians, share } from '../../src/units.ts'
import { conventionWords } from '../../src/words/conventionWords.ts'
import { stageWords } from '../../src/words/stageWords.ts'
import { wayName } from '../../src/words/wayName.ts'
import { exampleFigure, HALF_BEATS, walks } from '../tools/exampleFigure.ts'

const lesson = (figure: ReturnType<typeof walks>) => lessonOf(newSession(figure, beat(0)), figure)
const said = (figure: ReturnType<typeof walks>, panel: number, from: number, to: number) =>
  HALF_BEATS(from, to).map((t) => stageWords(lesson(figure), panel, t))

describe('stageWords(lesson, panel, t): S Q Q', () => {
  const sqq = walks('foxtrot', [2, 1, 1])
  test('in time', () => {
    expect(said(sqq, 0, -0.5, 3.5)).toEqual([
      'over the left foot, ready',
      'moving, right foot on its way',
      'placed, half way between the feet',
      'transferring to the right foot',
      'fully over the right foot, left passing',
      'placed, half way between the feet',
      'fully over the left foot, right passing',
      'placed, half way between the feet',
      'fully over the right foot, left collected',
    ])
  })
  test('late by ½', () => {
    expect(said(sqq, 1, 0, 1.5)).toEqual([
      'late by ½ beat: over the left foot, ready',
      'late by ½ beat: moving, right foot on its way',
      'late by ½ beat: placed, half way between the feet',
      'late by ½ beat: transferring to the right foot',
    ])
  })
  test('early: full a beat too soon, then waiting', () => {
    expect(said(sqq, 2, 0.5, 1.5)).toEqual([
      'early by 1 beat: fully over the right foot, left passing',
      'early by ½ beat: standing on the right foot, waiting',
      'fully over the right foot, left passing',
    ])
  })
})

test('stageWords: a tap takes no weight', () => {
  const figure = exampleFigure('exercise', [1, 1, 1], ['forward', 'tap', 'forward'])
  expect(stageWords(lesson(figure), 0, 1)).toBe('left foot taps, weight stays on the right')
  expect(stageWords(lesson(figure), 0, 1.5)).toBe('over the right foot, left touching without weight')
})

test('stageWords: a rock leaves the free foot in its place', () => {
  const figure = exampleFigure('rumba', [1, 1, 2], ['forward', 'in place', 'side'])
  expect(stageWords(lesson(figure), 0, 0)).toBe('fully over the right foot, left in its place')
})

describe('stageWords: a turn on the foot is said where it is made', () => {
  const by = (kind: FootTurn['kind']): FootTurn => ({ kind, by: radians(Math.PI) })

  test('a pivot at the full, before the next step', () => {
    const figure = exampleFigure('waltz', [1, 1], [{ direction: 'back', footTurn: by('pivot') }, 'forward'])
    expect(stageWords(lesson(figure), 0, 0.5)).toBe('fully over the right foot, pivoting')
  })
  test('a heel turn while the other foot comes in', () => {
    const figure = exampleFigure('foxtrot', [2, 2], ['back', { direction: 'close', footTurn: by('heel turn') }])
    expect(stageWords(lesson(figure), 0, 2)).toBe('turning on the right heel, left foot on its way in')
  })
  test('a twist with part weight, and one on a hold', () => {
    const crossed = { direction: 'cross behind', weight: share(0.5), footTurn: by('twist') } as const
    const twisted = exampleFigure('tango', [1, 1], [crossed, 'in place'])
    expect(stageWords(lesson(twisted), 0, 0.5)).toBe('part weight on the right foot (½), twisting')
    const held = exampleFigure('tango', [1, 1], ['side', { direction: 'hold', footTurn: by('pivot') }])
    expect(stageWords(lesson(held), 0, 1)).toBe('pivoting on the right foot')
  })
})

test('stageWords: before a lock or a half close the free foot is on its way in', () => {
  const lock = exampleFigure('quickstep', [2, 1], ['forward', 'lock behind'])
  expect(stageWords(lesson(lock), 0, 1.5)).toBe('fully over the right foot, left on its way in')
})

describe('conventionWords(lesson, t): in the action’s own words', () => {
  const words = (figure: ReturnType<typeof walks>, t: number) => conventionWords(lesson(figure), t).action
  test.each([
    ['foxtrot', [2, 1, 1], 0, 'a slow, on the & after: placed, half way; 1½ beats after the count: fully over'],
    ['foxtrot', [2, 1, 1], 2, 'a quick, on the count: placed, half way; on the & after: fully over'],
    ['rumba', [1, 1, 2], 0, 'a quick, on the count: fully over'],
    ['rumba', [1, 1, 2], 2, 'a slow, on the count: placed, half way; 1 beat after the count: fully over'],
    ['paso doble', [1, 1], 0, 'a step of 1 beat, on the count: foot and weight together, then still'],
  ] as const)('%s %j at %s', (dance, values, t, expected) => {
    expect(words(walks(dance, values), t)).toBe(expected)
  })
})

test('wayName(way)', () => {
  expect(wayName({ kind: 'late', by: beat(0.5) })).toBe('Late by ½ beat')
  expect(wayName({ kind: 'in time' })).toBe('In time')
})

test('conventionWords: a figure that goes its own way says so', () => {
  const own = walks('rumba', [1, 1, 2], { convention: 'split on the count' })
  expect(conventionWords(lesson(own), 0).source).toContain('half way on its count, set for this figure')
  expect(conventionWords(lesson(walks('rumba', [1])), 0).source).toContain('our own choice: ask your teacher')
})

test('wayName(early) names the part of the step’s time', () => {
  expect([0.25, 0.5, 0.75].map((part) => wayName({ kind: 'early', part: share(part) }))).toEqual([
    'Early: across in a quarter of the step’s time',
    'Early: across in half the step’s time',
    'Early: across in three quarters of the step’s time',
  ])
})
