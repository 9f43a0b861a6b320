import { deflateRawSync } from 'node:zlib'
import { describe, expect, test } from 'vitest'
import { crankedDriver } from '../../src/clock/crankedDriver.ts'
import { createPlayer } from '../../src/createPlayer.ts'
import { checksum } from '../../src/keep/checksum.ts'
import { LONGEST_LINK } from '../../src/keep/link.ts'
import { linkedFigure, linkOf } from '../../src/keep/linkOf.ts'
import { viewOfLink } from '../../src/keep/viewOfLink.ts'
import type { Player } from '../../src/player.ts'
import { withAmount } from '../../src/session/session.ts'
import { walks } from '../tools/exampleFigure.ts'

const TEXT = `overfoot: 1
title: Brought along
dance: foxtrot
role: leader
first foot: right
timing: [S Q Q, Q Q S]
actions: [forward, forward, forward]
`

const page = () => createPlayer([walks('foxtrot', [2, 1, 1], { id: 'sqq' })], crankedDriver())
const link = async (player: Player) => linkOf(player, await linkedFigure(player))
const withSum = (body: string): string => `${body}.${checksum(body)}`

/** As the address does it. */
async function follow(player: Player, fragment: string) {
  const view = await viewOfLink(player, fragment)
  if (typeof view === 'string') return view
  player.restore(view.session, view.brought)
  return null
}

describe('linkOf(player, figure), viewOfLink(player, fragment), player.restore(view)', () => {
  test('another page comes to stand where this one stood', async () => {
    const [here, there] = [page(), page()]
    here.setTempo(14.5)
    here.change((session) => withAmount(session, 'late', 0.25))
    here.hideNames()
    here.setLoop(false)
    here.seek(1.5)
    here.play()
    expect(await follow(there, (await link(here)) as string)).toBeNull()
    expect(here.store.getState().playing).toBe(false)
    expect(there.store.getState().session).toEqual(here.store.getState().session)
    expect(there.beatNow()).toBe(1.5)
  })
  test('an own figure travels along; neither its file’s name nor any other name does', async () => {
    const [here, there] = [page(), page()]
    await here.open(TEXT, 'for Tomke.figure.yaml')
    here.setTiming(1)
    here.seek(2)
    const fragment = (await link(here)) as string
    expect(fragment.length).toBeLessThan(260)
    expect(await follow(there, fragment)).toBeNull()
    const { session, lesson, own } = there.store.getState()
    expect(lesson.figure.title).toBe('Brought along')
    expect(lesson.schedule.timing.text).toBe('Q Q S')
    expect(session.beat).toBe(2)
    expect(own.map(({ text }) => text)).toEqual([TEXT])
    expect(JSON.stringify(own)).not.toContain('Tomke')
  })
  test('too long for a link: null', async () => {
    const player = page()
    // No text of these signs packs well.
    const remark = Array.from({ length: 1900 }, (_, k) => String.fromCodePoint(0x4e00 + ((k * 7919) % 20000))).join('')
    await player.open(`${TEXT}about: ${remark}\n`, 'long.yaml')
    expect(player.store.getState().lesson.figure.title).toBe('Brought along')
    expect(await link(player)).toBeNull()
  })
  test.each([
    ['damaged', '1.fsqq.0000000'],
    ['damaged', 'anything'],
    ['newer', withSum('2.fsqq')],
    ['unknown figure', withSum('1.fno-such-figure')],
    ['unfit', withSum('1.fsqq.b999')],
    ['unfit', withSum('1.fsqq.q1')],
    ['unfit', withSum('1.fsqq.o3')],
    ['unfit', withSum('1.fsqq.o00')],
    ['unfit', withSum('1.fsqq.o')],
    ['unfit', withSum('1.fsqq.s0-9')],
    ['unfit', withSum('1.fsqq.s2-1')],
    ['unfit', withSum('1.fsqq.s1')],
    ['unfit', withSum('1.fsqq.s0-1-2')],
    ['unfit', withSum('1.fsqq.wf')],
    ['unfit', withSum('1.fsqq.p0')],
    ['damaged', withSum('1.fsqq.n0.n0')],
    ['damaged', withSum('1.q')],
    ['damaged', withSum('1')],
    ['unfit', withSum('1.xAAAA')],
    ['unfit', withSum(`1.x${deflateRawSync(Buffer.from('title: no figure')).toString('base64url')}`)],
    ['unfit', withSum(`1.x${deflateRawSync(Buffer.alloc(1_000_000)).toString('base64url')}`)],
    ['damaged', withSum(`1.x${'A'.repeat(LONGEST_LINK)}`)],
  ])('%s: %.40s, and nothing changes', async (reason, fragment) => {
    const player = page()
    player.play()
    const before = player.store.getState()
    expect(await follow(player, fragment)).toBe(reason)
    expect(player.store.getState()).toBe(before)
  })
})
