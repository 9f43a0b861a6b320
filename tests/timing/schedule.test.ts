import { describe, expect, test } from 'vitest'
import { schedule } from '../../src/timing/schedule.ts'
import { beatValue } from '../../src/units.ts'
import { exampleFigure, walks } from '../tools/exampleFigure.ts'

const slots = (...args: Parameters<typeof walks>) =>
  schedule(walks(...args)).actions.map(({ moments }) => [moments.leaves, moments.split, moments.full])

describe('schedule(figure): split on the count (common practice, no source)', () => {
  test('a quick is split on its count', () => {
    expect(slots('foxtrot', [1])).toEqual([[-0.5, 0, 0.5]])
  })
  test('a slow is split on the & after and full a beat after its count', () => {
    expect(slots('foxtrot', [2])).toEqual([[-0.5, 0.5, 1.5]])
  })
  test('an & is full on its count', () => {
    expect(slots('foxtrot', [1, 0.5])[1]).toEqual([0.5, 0.75, 1])
  })
  test('1 2 & 3: the four steps abut', () => {
    expect(slots('waltz', [1, 0.5, 0.5, 1]).map(([leaves, , full]) => [leaves, full])).toEqual([
      [-0.5, 0.5],
      [0.5, 1],
      [1, 1.5],
      [1.5, 2.5],
    ])
  })
  test('S Q Q: [−½, 1½] [1½, 2½] [2½, 3½]', () => {
    expect(slots('foxtrot', [2, 1, 1]).map(([leaves, , full]) => [leaves, full])).toEqual([
      [-0.5, 1.5],
      [1.5, 2.5],
      [2.5, 3.5],
    ])
  })
  test('a beat and a half is split on the & and full a beat after its count (own judgement)', () => {
    expect(slots('foxtrot', [1.5])).toEqual([[-0.5, 0.5, 1]])
  })
  test('three quarters are split in their middle', () => {
    expect(slots('foxtrot', [0.75])).toEqual([[-0.5, -0.125, 0.25]])
  })
  test('a step after an a leaves when the a is full and is split on its own count', () => {
    expect(slots('foxtrot', [0.75, 0.25, 0.75])[2]).toEqual([0.5, 1, 1.25])
  })
  test('longer than a slow: a slow’s transfer, then it stands (own judgement)', () => {
    expect(slots('foxtrot', [4, 1])).toEqual([
      [-0.5, 0.5, 1.5],
      [3.5, 4, 4.5],
    ])
  })
})

describe('schedule(figure): full on the count (own judgement; rumba 4-1 half way on 4, full on 1: kensclassictrax.co.uk FAQ 19)', () => {
  test('rumba 2 3 4-1: full at 0, 1, 3 and the last half way at 2', () => {
    expect(slots('rumba', [1, 1, 2])).toEqual([
      [-1, -0.5, 0],
      [0, 0.5, 1],
      [1, 2, 3],
    ])
  })
  test('cha-cha 2 3 4 & 1: full on each count', () => {
    expect(slots('cha-cha-cha', [1, 1, 0.5, 0.5, 1]).map(([, , full]) => full)).toEqual([0, 1, 2, 2.5, 3])
  })
})

describe('schedule(figure): samba 1 a 2, full on the count', () => {
  test('full on each count and each a; one after another without a gap', () => {
    expect(slots('samba', [0.75, 0.25, 1])).toEqual([
      [-1, -0.5, 0],
      [0, 0.375, 0.75],
      [0.75, 0.875, 1],
    ])
  })
})

describe('schedule(figure) of a figure that begins with an & or a', () => {
  test('waltz & 1: the & is full on its own count and abuts the 1', () => {
    expect(slots('waltz', [0.5, 1])).toEqual([
      [-0.5, -0.25, 0],
      [0, 0.5, 1],
    ])
  })
  test('samba a 1: full on the a, then on the 1', () => {
    expect(slots('samba', [0.25, 0.75]).map(([, , full]) => full)).toEqual([0, 0.25])
  })
})

test('schedule(figure): tango S Q Q S &: the slow cut short by the & is full half a beat before it', () => {
  expect(slots('tango', [2, 1, 1, 1.5, 0.5]).slice(3)).toEqual([
    [3.5, 4.5, 5],
    [5, 5.25, 5.5],
  ])
})

describe('schedule(figure): struck (paso doble; common practice)', () => {
  test('half a beat to strike, full on the count, then stillness until the next', () => {
    expect(slots('paso doble', [1, 1])).toEqual([
      [-0.5, -0.25, 0],
      [0.5, 0.75, 1],
    ])
  })
  test('called less than half a beat after the one before, it leaves when that one is full', () => {
    expect(slots('paso doble', [0.25, 1])[1]).toEqual([0, 0.125, 0.25])
  })
})

describe('schedule(figure): own moments', () => {
  const one = (moments: object) => {
    const figure = exampleFigure('foxtrot', [2, 2], [{ direction: 'forward', moments }, 'forward'])
    return schedule(figure).actions.map((action) => action.moments)
  }
  test('a moment that is set wins over the convention', () => {
    const [first] = one({ split: beatValue(1), full: beatValue(3, 2) })
    expect(first).toEqual({ leaves: -0.5, touches: null, split: 1, full: 1.5 })
  })
  test('a full that is set later makes the next one wait for it', () => {
    const [, second] = one({ full: beatValue(2) })
    expect(second?.leaves).toBe(2)
  })
  test('a touch is kept', () => {
    expect(one({ touches: beatValue(0) })[0]?.touches).toBe(0)
  })
  test('a full that is set early keeps the split before it', () => {
    const [first] = one({ full: beatValue(1, 4) })
    expect(first).toMatchObject({ leaves: -0.5, split: -0.125, full: 0.25 })
  })
})

test('schedule(figure).grid is ½, and ¼ only where something lies on a quarter', () => {
  expect(schedule(walks('samba', [1, 1])).grid).toBe(0.5)
  expect(schedule(walks('samba', [0.75, 0.25, 1])).grid).toBe(0.25)
})

test('schedule(figure, timing) throws a RangeError for a timing that is not there', () => {
  expect(() => schedule(walks('waltz', [1]), 1)).toThrow(RangeError)
})
