import { describe, expect, test } from 'vitest'
import { rehearse } from '../../src/session/rehearse.ts'
import { newSession } from '../../src/session/session.ts'
import { beat, type Metres } from '../../src/units.ts'
import { demos } from '../tools/demos.ts'
import { exampleFigure } from '../tools/exampleFigure.ts'

describe('rehearse(session, figure)', () => {
  test('every demo can be shown', () => {
    for (const figure of demos) expect(() => rehearse(newSession(figure, beat(0)), figure)).not.toThrow()
  })
  test('throws where the floor has no end', () => {
    const size = Number.POSITIVE_INFINITY as Metres
    const figure = exampleFigure('foxtrot', [1, 1], [{ direction: 'forward', size }, 'forward'])
    expect(() => rehearse(newSession(figure, beat(0)), figure)).toThrow()
  })
})
