import { describe, expect, it } from 'vitest'
import { content } from '#lib/content/index.ts'
import { cautionsFor, type Work } from '../../app/_ui/cautions.tsx'

// Reading it takes seconds on a busy machine, and no test should be charged with that.
content()

const ids = (work: Work) => cautionsFor(work).map(({ id }) => id)

describe('cautionsFor(work)', () => {
  it.each(['lump-quicklime', 'ground-quicklime', 'quicklime-not-stated', 'not-stated', undefined] as const)(
    'warns of quicklime for a lime that is or may be such: %s',
    (state) => {
      expect(ids({ materials: [{ material: 'lime-cl90', state }] })).toContain('quicklime')
    },
  )

  it.each(['dry-hydrate', 'putty'] as const)(
    'does not for a lime that came as %s, and still of lime',
    (state) => {
      const shown = ids({ materials: [{ material: 'lime-cl90', state }] })
      expect(shown).not.toContain('quicklime')
      expect(shown).toContain('lime-putty-and-dust')
    },
  )

  it('warns of quicklime for every method that begins from it, putty run on site among them', () => {
    for (const method of ['hot-mixed-used-hot', 'hot-mixed-laid-down', 'sand-slaked', 'putty'] as const)
      expect(ids({ methods: [method], materials: [{ material: 'lime-cl90', state: 'putty' }] })).toContain(
        'quicklime',
      )
  })

  it('keeps that of kiln ash, which holds quicklime in whatever state', () => {
    expect(ids({ materials: [{ material: 'ash-lime-kiln', state: 'dry' }] })).toContain('quicklime')
  })

  it('puts the gravest first and asks for nothing where nothing is done', () => {
    const all = ids({ materials: [{ material: 'lime-cl90' }], uses: ['pointing'], roles: ['aggregate'] })
    expect(all[0]).toBe('quicklime')
    expect(ids({})).toEqual([])
  })
})
