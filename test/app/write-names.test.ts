import { describe, expect, it } from 'vitest'
import { content } from '#lib/content/index.ts'
import { pickTerms } from '../../app/_write/picks.ts'

const units = pickTerms('units')

describe('stones by the names that people on the spot use', () => {
  it.each([
    ['paekivi', 'limestone'],
    ['Lubjakivi', 'limestone'],
    ['dolomiit', 'dolostone'],
    ['maakivi', 'fieldstone'],
    ['tellis', 'brick'],
    ['savi', 'earth'],
    ['apnenec', 'limestone'],
    ['pescenjak', 'sandstone'],
    ['opeka', 'brick'],
    ['calcário', 'limestone'],
    ['xisto', 'schist'],
    ['taipa', 'rammed-earth'],
    ['adobe', 'adobe'],
    ['Backstein', 'brick'],
  ])('%s is %s', (name, id) => {
    expect(units.find(name)).toBe(id)
  })

  it('no name in another language stands for two', () => {
    const owners = new Map<string, string>()
    for (const { id, labels = {} } of content().vocabularies.get('units')?.values() ?? [])
      for (const name of Object.values(labels).flat()) {
        const known = owners.get(name.toLowerCase()) ?? id
        expect([name, known]).toEqual([name, id])
        owners.set(name.toLowerCase(), id)
      }
  })
})
