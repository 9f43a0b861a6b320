import { describe, expect, test } from 'vitest'
import type { Convention, Counting, DanceId, Provenance } from '../../src/dance/dance.ts'
import { danceList, dances } from '../../src/dance/dances.ts'

// A competition's order: standard, then Latin.
const order: readonly DanceId[] = [
  'waltz',
  'tango',
  'viennese waltz',
  'foxtrot',
  'quickstep',
  'samba',
  'cha-cha-cha',
  'rumba',
  'paso doble',
  'jive',
  'exercise',
]

describe('danceList', () => {
  test('holds every dance of the record, in the order of a competition', () => {
    expect(danceList.map((dance) => dance.id)).toEqual(order)
    expect(Object.keys(dances).sort()).toEqual([...order].sort())
  })

  test('each dance stands under its own id and has a name of its own', () => {
    for (const id of order) expect(dances[id].id).toBe(id)
    expect(new Set(danceList.map((dance) => dance.name)).size).toBe(order.length)
  })
})

// Common practice for the five standard dances; own judgement for the Latin ones. Struck tango: S12, Alex Moore,
// Questions and Answers for Ballroom Examinations, and S65, Wayne & Barbara Blackford, International Tango.
test.each<readonly [DanceId, Convention, readonly Convention[], Provenance]>([
  ['waltz', 'split on the count', [], 'common practice'],
  ['tango', 'split on the count', ['struck'], 'common practice'],
  ['viennese waltz', 'split on the count', [], 'common practice'],
  ['foxtrot', 'split on the count', [], 'common practice'],
  ['quickstep', 'split on the count', [], 'common practice'],
  ['samba', 'full on the count', [], 'own judgement'],
  ['cha-cha-cha', 'full on the count', ['split on the count'], 'own judgement'],
  ['rumba', 'full on the count', ['split on the count'], 'own judgement'],
  ['paso doble', 'struck', [], 'own judgement'],
  ['jive', 'full on the count', [], 'own judgement'],
  ['exercise', 'split on the count', [], 'own judgement'],
])('%s: the weight is %s, other schools %j (%s)', (id, convention, others, provenance) => {
  const dance = dances[id]
  expect(dance.convention).toBe(convention)
  expect(dance.otherConventions).toEqual(others)
  expect(dance.conventionSource.provenance).toBe(provenance)
})

// Counted aloud: S7, student revision cards of IDTA Associate theory, which number the bars and spell the jive in quicks.
test.each<readonly [DanceId, Counting]>([
  ['waltz', 'bars and beats'],
  ['tango', 'slows and quicks'],
  ['viennese waltz', 'bars and beats'],
  ['foxtrot', 'slows and quicks'],
  ['quickstep', 'slows and quicks'],
  ['samba', 'bars and beats'],
  ['cha-cha-cha', 'bars and beats'],
  ['rumba', 'bars and beats'],
  ['paso doble', 'bars and beats'],
  ['jive', 'slows and quicks'],
  ['exercise', 'slows and quicks'],
])('%s is counted in %s', (id, counting) => {
  expect(dances[id].counting).toBe(counting)
})

// S13, Dancing Tid-bits nos. 3 (2 3 4 & 1) and 188 (2 3 4-1); S44, FAQ 19, the 2 beat in rumba and cha-cha.
test('figures begin on count 2 in cha-cha-cha and rumba, and on 1 in every other dance', () => {
  const onTwo = danceList.filter((dance) => dance.firstCount === 2).map((dance) => dance.id)
  expect(onTwo).toEqual(['cha-cha-cha', 'rumba'])
  for (const dance of danceList) if (!onTwo.includes(dance.id)) expect(dance.firstCount).toBe(1)
})

// Samba: S24, ISTD-derived notes on samba and paso, and S94, dancesportmalaysia.blogspot.com, 6 Apr 2009: two-bar phrases.
// Paso doble: two bars in S24. Waltz: S96, factspage.blogspot.com, 2013: 8 bars. The rest from memory.
test('a phrase has 8 bars, in samba and paso doble 2', () => {
  const short = danceList.filter((dance) => dance.barsPerPhrase === 2).map((dance) => dance.id)
  expect(short).toEqual(['samba', 'paso doble'])
  for (const dance of danceList) if (!short.includes(dance.id)) expect(dance.barsPerPhrase).toBe(8)
})

test('a bar has as many written beats as its time signature says, and danced beats to match', () => {
  for (const { beatsPerBar, timeSignature, written } of danceList) {
    expect(timeSignature).toBe(`${beatsPerBar}/4`)
    if (written) {
      expect(written.timeSignature).toBe(`${written.beatsPerBar}/4`)
      expect(written.beatsPerBar * written.danced).toBe(beatsPerBar)
    }
  }
})

test('whatever is said to be published names a text', () => {
  const sources = danceList.flatMap((dance) => [
    dance.tempo.source,
    dance.signs.source,
    dance.conventionSource,
    ...dance.otherTempi.map((tempo) => tempo.source),
    ...(dance.written ? [dance.written.source] : []),
  ])
  const silent = sources.filter((source) => source.provenance === 'published' && source.text.trim() === '')
  expect(sources.length).toBeGreaterThan(3 * order.length)
  expect(silent).toEqual([])
})
