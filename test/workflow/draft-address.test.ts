import { v7 } from 'uuid'
import { beforeAll, describe, expect, it } from 'vitest'
import { content } from '#lib/content/index.ts'
import { ownDraft } from '#lib/db/drafts.ts'
import { freeSlug } from '#lib/db/free-slug.ts'
import { beginDraft } from '#lib/workflow/draft-begin.ts'
import { submit } from '#lib/workflow/submit.ts'
import { pointingFaults } from '../../app/_write/pointing-faults.ts'
import { addressOf, proposals } from '../../app/_write/proposals.ts'
import { viewOf } from '../../app/_write/view.ts'
import { CONTRIBUTOR, makeCase, makeRecipe, makeSubmission, publish, REFERENCES } from '../support/make.ts'

beforeAll(async () => {
  for (const slug of ['grey-lime', 'grey-lime-2', 'recipe'])
    await submit(CONTRIBUTOR, makeSubmission({ slug, body: makeRecipe() }), REFERENCES)
})

const view = async (typed: Record<string, string>, kind: 'recipe' | 'material' | 'visit' = 'recipe') => {
  const beginning = { id: v7(), kind, slug: null, basedOn: null, adaptedFrom: null, typed }
  const { id } = await beginDraft(CONTRIBUTOR, beginning)
  const draft = await ownDraft(CONTRIBUTOR.key, id)
  if (draft === null) throw new Error('there is no such draft')
  return viewOf(draft)
}
const proposed = async (...given: Parameters<typeof view>) =>
  (await proposals(await view(...given)))['entry.slug']

it('freeSlug(words, taken) counts on past what entries and others have', async () => {
  expect(await freeSlug('white-lime', () => false)).toBe('white-lime')
  expect(await freeSlug('grey-lime', () => false)).toBe('grey-lime-3')
  expect(await freeSlug('grey-lime', (slug) => !slug.endsWith('-90'))).toBe('grey-lime-90')
})

describe('the address of a new entry', () => {
  it('is proposed from its title, and free', async () => {
    expect(await proposed({ title: 'Grey lime' })).toBe('grey-lime-3')
    expect(await addressOf(await view({ title: 'Grey lime' }))).toBe('grey-lime-3')
  })

  it('is made of its kind where the title has no letters for one', async () => {
    expect(await proposed({ title: 'Серая известь' })).toBe('recipe-2')
  })

  it('is none of the site’s own materials', async () => {
    const [own = ''] = content().materials.keys()
    expect(await proposed({ title: own.replaceAll('-', ' ') }, 'material')).toBe(`${own}-2`)
  })

  it('of a visit keeps its day, however long the name of the case', async () => {
    const slug = `a-${'very-'.repeat(12)}long-wall`
    await publish('case', slug, makeCase())
    const address = await proposed({ case: slug, on: '12 June 2019' }, 'visit')
    expect(address).toMatch(/^a-very-.*-2019-06-12$/)
    expect(address?.length).toBeLessThanOrEqual(70)
  })

  it('stands against nothing while nobody typed one, and is told in words where somebody did', async () => {
    const address = async (slug: string) => {
      const faults = await pointingFaults(await viewWith(slug))
      return faults.filter(({ name }) => name === 'entry.slug').map(({ sentence }) => sentence)
    }
    expect(await address('')).toEqual([])
    expect(await address('white-lime')).toEqual([])
    expect(await address('grey-lime')).toEqual([
      'Address on this site: “grey-lime” belongs to another entry. Choose another, such as grey-lime-3, or leave it blank.',
    ])
  })

  it('that cannot be one is told with the nearest that can', async () => {
    const { faults } = await viewWith('Façade Nord!')
    expect(faults.map(({ sentence }) => sentence).join()).toContain(
      'Address on this site: “Façade Nord!” cannot be an address. Use small letters without accents, digits and single hyphens, such as facade-nord.',
    )
  })
})

/** A recipe whose body is whole, with an address as typed. */
const viewWith = (slug: string) =>
  view({
    title: 'Grey lime',
    ...{ summary: 'For rubble.', family: 'air-lime', uses: 'pointing', standing: 'in-use', method: 'putty' },
    ...{ 'ingredients.0.material': 'lime-fat', 'ingredients.0.role': 'lime', 'ingredients.0.parts': '1' },
    ...{ 'ingredients.0.by': 'volume', 'ingredients.0.state': 'putty', 'entry.slug': slug },
  })
