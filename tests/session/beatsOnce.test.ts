import { describe, expect, test } from 'vitest'
import { beatsOnce } from '../../src/session/beatsOnce.ts'
import { lessonOf } from '../../src/session/lesson.ts'
import { newSession, withJoined } from '../../src/session/session.ts'
import { beat } from '../../src/units.ts'
import { demos } from '../tools/demos.ts'

describe('beatsOnce(lesson, one, other)', () => {
  test('of a figure that is danced with a stop they are what they are, the earlier first', () => {
    for (const figure of demos) {
      const lesson = lessonOf(newSession(figure, beat(0)), figure)
      expect(beatsOnce(lesson, 3, 1)).toEqual({ from: 1, to: 3 })
    }
  })

  test('of a joined loop they are those of the round in which the earlier one lies, from its very left on', () => {
    const joined = demos
      .map((figure) => lessonOf(withJoined(newSession(figure, beat(0)), true), figure))
      .filter((lesson) => lesson.joined)
    expect(joined.length).toBeGreaterThan(10)
    for (const lesson of joined) {
      const { range, once, round, schedule, steps } = lesson
      const { length } = once.schedule
      // As far before the first count as its weight leaves, which is the same danced once.
      const before = (schedule.actions[steps.first]?.called ?? 0) - range.from
      for (let start = 0; start < round; start += length) {
        const { from, to } = beatsOnce(lesson, range.from + start, range.from + start + 1.5)
        expect(from).toBeCloseTo(-before, 9)
        expect(to - from).toBeCloseTo(1.5, 9)
      }
    }
  })
})
