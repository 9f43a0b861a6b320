import { expect, type Page, test } from '@playwright/test'
import { openWords } from '../../src/words/openWords.ts'
import { beatNow, open, withoutGpu } from './watch.ts'

test.beforeEach(({ page }) => withoutGpu(page))

const button = (page: Page, name: string) => page.getByRole('button', { name, exact: true })

const NOT_LOADED = openWords.failed['not loaded']

/** What comes when it is first asked for: how it is asked for, and what is then on the page. The table stands in Show. */
const PARTS = [
  {
    file: 'ShowSheet',
    ask: (page: Page) => button(page, 'Show').click(),
    shown: (page: Page) => page.getByRole('region', { name: 'Show' }).getByRole('checkbox'),
    close: async () => {},
  },
  {
    file: 'TableDialog',
    ask: (page: Page) => button(page, 'As a table').click(),
    shown: (page: Page) => page.getByRole('dialog', { name: 'The figure as a table of half beats' }).getByRole('row'),
    close: (page: Page) => page.keyboard.press('Escape'),
  },
  {
    file: 'KeysDialog',
    ask: (page: Page) => page.keyboard.press('h'),
    shown: (page: Page) => page.getByRole('dialog', { name: 'Keys' }).getByText('plays and pauses'),
    close: (page: Page) => page.keyboard.press('Escape'),
  },
  {
    file: 'NotesDialog',
    ask: (page: Page) => button(page, 'Notes and cautions').click(),
    shown: (page: Page) => page.locator('dialog.notes').getByRole('heading'),
    close: (page: Page) => page.keyboard.press('Escape'),
  },
  {
    file: 'Marks',
    ask: (page: Page) => button(page, 'What is what').click(),
    shown: (page: Page) => page.locator('.marks .mark'),
    close: (page: Page) => page.keyboard.press('Escape'),
  },
] as const
const FILES = PARTS.map(({ file }) => file)

/** The part that a path of the built page is of, if it is one's: files are named after what they export. */
const partOf = (address: string): string | undefined =>
  FILES.find((file) => new URL(address).pathname.startsWith(`/assets/${file}-`))

/** The parts that have arrived, in the order of the alphabet. */
async function arrived(page: Page): Promise<string[]> {
  const names = await page.evaluate(() =>
    (performance.getEntriesByType('resource') as PerformanceResourceTiming[])
      .filter(({ responseStatus }) => responseStatus === 200)
      .map(({ name }) => name),
  )
  return [...new Set(names.flatMap((name) => partOf(name) ?? []))].sort()
}

async function opens(page: Page, { ask, shown, close }: (typeof PARTS)[number]): Promise<void> {
  await ask(page)
  await expect(shown(page).first()).toBeVisible()
  await close(page)
}

const FIGURE = `overfoot: 1
title: Quillmoor walk
dance: foxtrot
role: leader
first foot: right
timing: S Q Q
actions: [forward, forward, forward]
`

/** All that could be lost: the figures opened, what is set, where it stands, and whether it plays. */
const atWork = async (page: Page) => {
  const state = await page.evaluate(() => {
    const { session, lesson, own, playing } = window.overfoot.player.store.getState()
    // A figure that came by a link has another id than the file it once was.
    return { session: { ...session, figure: lesson.figure.title }, own: own.map(({ text }) => text), playing }
  })
  return { ...state, at: await beatNow(page) }
}

/** A figure of the visitor's own, on a beat in it, seen in another way and at another speed than at first. */
async function setToWork(page: Page): Promise<void> {
  await page.locator('input[type=file]').setInputFiles({ name: 'a.yaml', mimeType: '', buffer: Buffer.from(FIGURE) })
  await expect.poll(async () => (await atWork(page)).own).toEqual([FIGURE])
  await page.evaluate(() => {
    const { player } = window.overfoot
    player.change((session) => ({ ...session, seen: 'class' }))
    player.setTempo(20)
    player.seek(2.5)
  })
}

test('the network goes: what was never asked for opens all the same', async ({ page, context }) => {
  await open(page)
  // A second after the first picture, which stands now, the page begins to fetch them by itself.
  await expect.poll(() => arrived(page), { timeout: 3000 }).toEqual(FILES.toSorted())
  await context.setOffline(true)
  const fetched = () =>
    page.evaluate(() =>
      fetch('/').then(
        () => 'here',
        () => 'gone',
      ),
    )
  expect(await fetched()).toBe('gone')
  for (const part of PARTS) await opens(page, part)
  await expect(page.locator('.notice')).toHaveCount(0)
})

test('what could not be fetched is said to be missing and costs nothing; after a reload online all is there', async ({
  page,
}) => {
  const errors: string[] = []
  page.on('pageerror', ({ message }) => errors.push(message))
  let online = false
  const refused: string[] = []
  await page.route('**/assets/*.js', (route) => {
    const part = partOf(route.request().url())
    if (part === undefined || online) return route.continue()
    refused.push(part)
    return route.abort('internetdisconnected')
  })
  await open(page)
  // Nobody has asked yet: the page wanted them by itself.
  await expect.poll(() => refused.toSorted()).toEqual(FILES.toSorted())
  await setToWork(page)
  const before = await atWork(page)
  const said = page.locator('.notice output')
  // The table is asked for in Show, which is missing itself.
  for (const { ask, shown } of PARTS.filter(({ file }) => file !== 'TableDialog')) {
    await ask(page)
    await expect(said).toHaveText(NOT_LOADED)
    await expect(shown(page)).toHaveCount(0)
    expect(await atWork(page)).toEqual(before)
    await button(page, 'Dismiss').click()
    await expect(said).toHaveCount(0)
  }
  // The page advises a reload. A link keeps one's work over it.
  await button(page, 'Link').click()
  await expect(page).toHaveURL(/#1\./)

  online = true
  await page.reload()
  await expect(page.getByRole('combobox', { name: 'Figure' })).toContainText('Quillmoor walk')
  await expect.poll(() => atWork(page)).toEqual(before)
  for (const part of PARTS) await opens(page, part)
  await expect(said).toHaveCount(0)
  expect(errors).toEqual([])
})
