import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { pagedPanels } from '../../src/scene/pagedPanels.ts'
import { pageAt, pagesOf } from '../../src/scene/pages.ts'
import { panelView } from '../../src/scene/panelView.ts'
import { type View, viewsOf } from '../../src/scene/view.ts'
import { lessonOf } from '../../src/session/lesson.ts'
import { newSession, withAmount } from '../../src/session/session.ts'
import { beat } from '../../src/units.ts'
import { walks } from '../tools/exampleFigure.ts'

const MOST = 4
const atMost = (first: number, last: number): boolean => last - first < MOST

describe('pagesOf(steps, fits, fullAt)', () => {
  test('every action once, in order, on as few pages as hold them, about alike in length', () => {
    fc.assert(
      fc.property(fc.nat(40), fc.nat(40), (first, more) => {
        const pages = pagesOf({ first, last: first + more }, atMost, (action) => action)
        expect(pages.flatMap((page) => [page.first, page.last])[0]).toBe(first)
        expect(pages.at(-1)?.last).toBe(first + more)
        for (const [k, page] of pages.entries()) {
          expect(atMost(page.first, page.last)).toBe(true)
          if (k > 0) expect(page.first).toBe((pages[k - 1]?.last ?? 0) + 1)
        }
        expect(pages.length).toBe(Math.ceil((more + 1) / MOST))
        const lengths = pages.map((page) => page.last - page.first + 1)
        // All alike, and the last takes what is left.
        expect(new Set(lengths.slice(0, -1)).size).toBeLessThanOrEqual(1)
        expect(lengths.at(-1)).toBeLessThanOrEqual(lengths[0] ?? 0)
      }),
      { seed: 20261125, numRuns: 300 },
    )
  })
  test('an action that does not fit alone still has its page', () => {
    expect(
      pagesOf(
        { first: 0, last: 2 },
        () => false,
        (action) => action,
      ),
    ).toHaveLength(3)
  })
  test('the page turns when the plan has the action before done', () => {
    const pages = pagesOf({ first: 0, last: 5 }, atMost, (action) => action + 0.5)
    expect(pages.map(({ from }) => from)).toEqual([Number.NEGATIVE_INFINITY, 2.5])
    expect([-9, 2.4, 2.5, 99].map((t) => pageAt(pages, t))).toEqual([0, 0, 1, 1])
  })
})

describe('a figure longer than a picture: sixteen walks of a beat', () => {
  const long = walks(
    'foxtrot',
    Array.from({ length: 16 }, () => 1),
  )
  const SIZES = [
    ['laptop', 400, 400],
    ['tablet', 310, 380],
    ['phone', 360, 240],
    ['one on a laptop', 1248, 380],
  ] as const

  test.each(SIZES)(
    '%s: feet stay readable, and all that moves is on the page, also who is late by a whole beat',
    (_, width, height) => {
      const lesson = lessonOf(withAmount(newSession(long, beat(0)), 'late', 1), long)
      const views = viewsOf(lesson, width, height)
      expect(views.length).toBeGreaterThan(1)
      for (const [panel] of lesson.panels.entries()) {
        const panels = views.map((view) => panelView(lesson, panel, view, true))
        const pages = views.map(({ page }) => page)
        for (let t: number = lesson.range.from; t <= lesson.range.to; t += 1 / 8) {
          const { picture, frameAt } = panels[pageAt(pages, t)] as (typeof panels)[number]
          expect(picture.footLength * picture.pixelsPerMetre).toBeGreaterThanOrEqual(height / 9)
          const { left, right, marker, ghost } = frameAt(t)
          for (const point of [left, right, marker, ...(ghost === null ? [] : [ghost])]) {
            expect(Math.abs(point.x * picture.pixelsPerMetre)).toBeLessThanOrEqual(width / 2)
            expect(Math.abs(point.y * picture.pixelsPerMetre)).toBeLessThanOrEqual(height / 2)
          }
        }
      }
    },
  )
  test('all pages have one scale and lie the same way round; the floor alone is another piece', () => {
    const views = viewsOf(lessonOf(newSession(long, beat(0)), long), 400, 400)
    const [first] = views as [View]
    for (const view of views) {
      expect([view.pixelsPerMetre, view.turned, view.body]).toEqual([first.pixelsPerMetre, first.turned, first.body])
    }
    expect(new Set(views.map(({ middle }) => middle.y)).size).toBe(views.length)
  })
  test('trail and beads of a page begin where the page does', () => {
    const lesson = lessonOf(newSession(long, beat(0)), long)
    const views = viewsOf(lesson, 400, 400)
    const second = views[1] as View
    const { frameAt } = panelView(lesson, 0, second, true)
    const { trail, trailPoints, beads, marker } = frameAt(second.page.from)
    expect(trailPoints).toBe(1)
    expect([trail[0], trail[1]]).toEqual([marker.x, marker.y])
    expect(beads).toHaveLength(1)
  })
  test('large and small panels turn together', () => {
    const lesson = lessonOf(newSession(long, beat(0)), long)
    const rects = [
      { x: 0, y: 0, width: 360, height: 240 },
      { x: 0, y: 250, width: 170, height: 100 },
      { x: 180, y: 250, width: 170, height: 100 },
    ]
    const paged = pagedPanels(lesson, [0, 1, 2], rects, true)
    for (let t: number = lesson.range.from; t <= lesson.range.to; t += 0.5) {
      const now = paged.picturesAt(t)
      expect(now).toHaveLength(3)
      expect(new Set(now.map(({ picture }) => `${picture.page.index}/${picture.page.count}`)).size).toBe(1)
      expect(now[0]?.picture.page.index).toBe(paged.pageAt(t))
    }
  })
})
