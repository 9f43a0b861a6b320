import { describe, expect, test } from 'vitest'
import { crankedDriver } from '../../src/clock/crankedDriver.ts'
import { createPlayer } from '../../src/createPlayer.ts'
import { openFiles, openPasted } from '../../src/keep/openFiles.ts'
import { walks } from '../tools/exampleFigure.ts'

const textOf = (title: string): string => `overfoot: 1
title: ${title}
dance: foxtrot
role: leader
first foot: right
timing: S Q Q
actions: [forward, forward, forward]
`

const page = () => createPlayer([walks('foxtrot', [2, 1, 1], { id: 'sqq' })], crankedDriver())
const own = (player: ReturnType<typeof page>) => player.store.getState().own.map(({ figure }) => figure.title)

describe('openFiles(player, files)', () => {
  test('good ones come into the menu, the last one onto the screen; bad ones say why', async () => {
    const player = page()
    const opened = await openFiles(player, [
      new File([textOf('One')], 'one.figure.yaml'),
      new File(['nonsense'], 'nonsense.txt'),
      new File([textOf('Two')], 'two'),
    ])
    expect(opened.map(({ kind }) => kind)).toEqual(['shown', 'refused', 'shown'])
    expect(opened[1]).toMatchObject({ file: 'nonsense.txt', text: 'nonsense', problems: [{ code: 'not-a-mapping' }] })
    expect(own(player)).toEqual(['One', 'Two'])
    expect(player.store.getState().lesson.figure.title).toBe('Two')
  })
  test('a file of more than 64 KB is not even read', async () => {
    const large = new File([new Uint8Array(64 * 1024 + 1)], 'large.yaml')
    large.text = () => Promise.reject(new Error('it was read'))
    const [opened] = await openFiles(page(), [large])
    expect(opened).toMatchObject({ kind: 'refused', problems: [{ code: 'too-large', values: { bytes: 65537 } }] })
  })
  test('a folder, which the browser hands over as a file that cannot be read', async () => {
    const folder = new File([], 'folder')
    folder.text = () => Promise.reject(new DOMException('', 'NotFoundError'))
    expect(await openFiles(page(), [folder])).toEqual([{ kind: 'unreadable', file: 'folder' }])
  })
})

describe('openPasted(player, text)', () => {
  test('another text is another figure; the same text again is the same', async () => {
    const player = page()
    for (const title of ['One', 'Two', 'One']) expect((await openPasted(player, textOf(title))).kind).toBe('shown')
    expect(own(player)).toEqual(['One', 'Two'])
    expect(player.store.getState().lesson.figure.title).toBe('One')
  })
})
