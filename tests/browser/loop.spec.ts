import { expect, test as fresh, type Page } from '@playwright/test'
import { axeFindings } from './axeFindings.ts'
import { test } from './reusedPage.ts'
import { open, withoutGpu } from './watch.ts'

/** The figure whose file begins with a number. */
const choose = (page: Page, number: string) =>
  page.evaluate((start) => {
    const { player } = window.overfoot
    player.choose(player.figures.find(({ id }) => id.startsWith(start))?.id ?? '')
  }, number)

const lesson = (page: Page) =>
  page.evaluate(() => {
    const { part, joined, range, round, schedule } = window.overfoot.player.store.getState().lesson
    return { part, joined, range, round, length: schedule.length }
  })

/** Where on the screen a beat of the strip lies. */
async function placeOf(page: Page, beat: number): Promise<{ x: number; y: number }> {
  const box = await page.locator('.strip-touch').boundingBox()
  const { range } = await lesson(page)
  if (box === null) throw new Error('no strip')
  return { x: box.x + (box.width * (beat - range.from)) / (range.to - range.from), y: box.y + box.height / 2 }
}

test('a drag along the strip loops that part, on half beats; the loop’s button is the way back', async ({ page }) => {
  await page.setViewportSize({ width: 1280, height: 800 })
  await open(page)
  await choose(page, '22')
  const [from, to] = [await placeOf(page, 4.1), await placeOf(page, 11.9)]
  await page.mouse.move(from.x, from.y)
  await page.mouse.down()
  await page.mouse.move(to.x, to.y, { steps: 5 })
  await expect(page.locator('.strip-chosen')).toBeVisible()
  await page.mouse.up()
  await expect(page.locator('.strip-chosen')).toBeHidden()
  const { part, round } = await lesson(page)
  expect(part).toMatchObject({ from: 4, to: 12 })
  expect(round % 4).toBe(0)
  await expect(page.locator('.strip-part')).toHaveText(/^Loop: steps \d+ to \d+$/)
  // The step that leads in, and what follows, are shaded.
  await expect(page.locator('.strip-shade')).toHaveCount(2)
  expect(await axeFindings(page)).toEqual([])
  // It is danced over and over, from the step that leads in.
  await page.getByRole('button', { name: 'Play', exact: true }).click()
  await page.evaluate(() => window.overfoot.player.seek(window.overfoot.player.store.getState().lesson.range.to - 0.5))
  await expect.poll(() => page.evaluate(() => window.overfoot.player.beatNow())).toBeLessThan(6)
  await page.getByRole('button', { name: 'Loop the whole figure' }).click()
  expect((await lesson(page)).part).toBeNull()
  await expect(page.locator('.strip-part')).toBeHidden()
  // A finger that is quicker than the page.
  const quick = await Promise.all([placeOf(page, 4), placeOf(page, 8)])
  await page.locator('.strip-touch').evaluate(
    (strip, ends) => {
      strip.setPointerCapture = () => {}
      const tell = (type: string, { x, y }: { x: number; y: number }) =>
        strip.dispatchEvent(
          new PointerEvent(type, { bubbles: true, cancelable: true, isPrimary: true, clientX: x, clientY: y }),
        )
      tell('pointerdown', ends[0])
      tell('pointermove', ends[1])
      tell('pointerup', ends[1])
    },
    quick as [{ x: number; y: number }, { x: number; y: number }],
  )
  expect((await lesson(page)).part).toMatchObject({ from: 4, to: 8 })
})

test('by keys alone: from here, up to here; by the two sliders; a bar; and without a stop', async ({ page }) => {
  await page.setViewportSize({ width: 1024, height: 768 })
  await open(page)
  await choose(page, '22')
  await page.evaluate(() => window.overfoot.player.seek(4))
  await page.keyboard.press('[')
  expect((await lesson(page)).part).toMatchObject({ from: 4 })
  await page.evaluate(() => window.overfoot.player.seek(8))
  await page.keyboard.press(']')
  expect((await lesson(page)).part).toMatchObject({ from: 4, to: 8 })

  await page.getByRole('button', { name: 'Practice' }).click()
  const end = page.getByRole('slider', { name: 'Loop to' })
  await end.focus()
  await page.keyboard.press('ArrowRight')
  await page.keyboard.press('ArrowRight')
  expect((await lesson(page)).part).toMatchObject({ from: 4, to: 9 })
  await expect(end).toHaveAttribute('aria-valuetext', 'bar 3, beat 2')
  await page.getByRole('button', { name: 'Two bars' }).click()
  expect((await lesson(page)).part).toMatchObject({ from: 8, to: 16 })
  expect(await axeFindings(page)).toEqual([])
  await page.getByRole('button', { name: 'Whole figure', exact: true }).click()
  const stopless = page.getByRole('checkbox', { name: 'Whole figure without a stop' })
  await stopless.click()
  // Danced once it stays chosen, and comes back with the loop.
  const loop = page.getByRole('button', { name: 'Loop the whole figure' })
  await loop.click()
  expect((await lesson(page)).joined).toBe(false)
  await expect(stopless).toBeChecked()
  await loop.click()
  await expect(stopless).toBeChecked()
  const joined = await lesson(page)
  expect(joined.joined).toBe(true)
  expect(joined.range.to - joined.range.from).toBe(joined.round)
  // Nine bars: as many words as there is room for, and none on another.
  for (const [width, height] of [
    [1280, 800],
    [1024, 768],
    [390, 844],
  ] as const) {
    await page.setViewportSize({ width, height })
    for (const counting of ['slows and quicks', 'bars and beats', 'half beats']) {
      await page.evaluate((counting) => {
        window.overfoot.player.change((session) => ({ ...session, counting }) as typeof session)
      }, counting)
      const words = () =>
        page.evaluate(() => {
          const boxesOf = (selector: string) =>
            [...document.querySelectorAll(selector)].map((element) => {
              const range = document.createRange()
              range.selectNodeContents(element)
              return range.getBoundingClientRect()
            })
          const boxes = [...boxesOf('.strip-count'), ...boxesOf('.strip-name')]
          const meets = (a: DOMRect, b: DOMRect) =>
            a.left < b.right && a.right > b.left && a.top + 3 < b.bottom && a.bottom > b.top + 3
          return {
            count: boxes.length,
            met: boxes.filter((a, k) => boxes.slice(k + 1).some((b) => meets(a, b))).length,
          }
        })
      await expect.poll(async () => (await words()).met, { message: `${width}: ${counting}` }).toBe(0)
      expect((await words()).count).toBeGreaterThanOrEqual(9)
    }
  }
})

fresh('by touch: a finger along the strip chooses, one across it leaves the page to scroll', async ({ browser }) => {
  const page = await browser.newPage({ viewport: { width: 390, height: 844 }, hasTouch: true })
  await withoutGpu(page)
  await open(page)
  await choose(page, '22')
  const strip = page.locator('.strip-touch')
  await strip.scrollIntoViewIfNeeded()
  expect(await strip.evaluate((element) => getComputedStyle(element).touchAction)).toBe('pan-y pinch-zoom')
  const [from, to] = [await placeOf(page, 0), await placeOf(page, 8)]
  const finger = await page.context().newCDPSession(page)
  const touch = (type: 'touchStart' | 'touchMove' | 'touchEnd', points: { x: number; y: number }[]) =>
    finger.send('Input.dispatchTouchEvent', { type, touchPoints: points })
  await touch('touchStart', [from])
  for (let k = 1; k <= 6; k++) await touch('touchMove', [{ x: from.x + ((to.x - from.x) * k) / 6, y: from.y }])
  await touch('touchEnd', [])
  expect((await lesson(page)).part).toMatchObject({ from: 0, to: 8 })
  await page.close()
})

test('counted in: the dancers stand, the count runs, then they dance', async ({ page }) => {
  await open(page)
  await page.getByRole('button', { name: 'Practice' }).click()
  await page.getByRole('combobox', { name: 'Count-in before the loop', exact: true }).selectOption({ label: '1 bar' })
  await page.getByRole('button', { name: 'Play', exact: true }).click()
  // Frame by frame until somebody dances: where the weight is, and what is counted.
  const seen = await page.evaluate(async () => {
    const { player } = window.overfoot
    const { from } = player.store.getState().lesson.range
    const counts = new Set<string>()
    const places = new Set<string>()
    const words = new Set<string>()
    while (player.beatNow() < from) {
      counts.add(document.querySelector('.count-now')?.textContent ?? '')
      words.add(document.querySelector('.convention-action .steady > :last-child')?.textContent ?? '')
      const { x, y } = player.pictureNow()[0]?.frame.marker ?? { x: 0, y: 0 }
      places.add(`${x} ${y}`)
      await new Promise(requestAnimationFrame)
    }
    return { counts: [...counts], places: places.size, words: [...words] }
  })
  expect(seen.counts).toEqual(expect.arrayContaining(['2', '3', '4']))
  expect(seen.places).toBe(1)
  expect(seen.words).toContain('counted in: stand ready over the standing foot')
  await expect.poll(() => page.evaluate(() => window.overfoot.player.beatNow())).toBeGreaterThan(0)
})
