import { describe, expect, test } from 'vitest'
import type { Role } from '../../src/figure/figure.ts'
import { naturalOpposite } from '../../src/figure/naturalOpposite.ts'
import { partnerWords } from '../../src/words/partnerWords.ts'
import { walks } from '../tools/exampleFigure.ts'

const ROLES: readonly Role[] = ['leader', 'follower']
const written = (role: Role) => walks('foxtrot', [2, 1, 1], { role })

describe('partnerWords(figure as written)', () => {
  test('for a leader’s figure', () => {
    expect(partnerWords(written('leader'))).toBe(
      'Follower’s part: the natural opposite of the leader’s steps, made by rule. A chart may differ.',
    )
  })

  test.each(ROLES)('names whose part naturalOpposite makes, and from whose steps: %s written', (role) => {
    const said = partnerWords(written(role)).toLowerCase()
    const made = naturalOpposite(written(role)).role
    expect(said.startsWith(`${made}’s part: `)).toBe(true)
    expect(said).toContain(`of the ${role}’s steps`)
  })

  test('is short enough for one line under a picture, and owns that it is a rule’s', () => {
    for (const role of ROLES) {
      expect(partnerWords(written(role)).length).toBeLessThanOrEqual(100)
      expect(partnerWords(written(role))).toMatch(/made by rule\. A chart may differ\.$/)
    }
  })
})
