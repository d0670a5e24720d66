import { describe, expect, it } from 'vitest'
import { MOST_PRINTED } from '#lib/entry/kept-sheet.ts'
import { bodyTree } from '#lib/entry/tree.ts'
import { copyOf, openAddress, workedOn } from '#lib/entry/worked-on.ts'

const kept = (over: object = {}) => ({
  id: '01890000-0000-7000-8000-000000000001',
  name: 'West face',
  calculation: 'job',
  address: '/recipes/hot-lime/job?use=pointing&area=12&price-lime-fat=14.20&is=0123456789',
  recipe: { slug: 'hot-lime', revision: 2 },
  edition: '2026-11',
  sums: 3,
  digest: '0123456789',
  figures: { printed: [{ label: 'Mortar to make', value: '100 L' }] },
  ...over,
})

describe('openAddress(calculation, address)', () => {
  it.each([
    ['prices of packs', 'price-lime-fat=14.20&price-sand-pit=3'],
    ['how a price was meant', 'price-lime-fat=1%2C500&price-lime-fat-mark=thousands'],
    ['hours and pay', 'hours=12.5&rate=31'],
    ['the same of further works', 'hours-2=3&rate-2=31&rate-2-mark=decimal&price-lime-3=4'],
    ['the currency', 'money=EUR'],
    ['a name, however it is written', 'label=Widow+Rea%26son&lab%65l=Widow'],
  ])('leaves out %s', (_, own) => {
    const open = '/recipes/hot-lime/job?use=pointing&area=12&is=0123456789'
    expect(openAddress('job', open.replace('&is', `&${own}&is`), '0123456789')).toBe(open)
  })

  it('leaves all else as it stands, its writing too', () => {
    const rest =
      'use=pointing&hours-to-set=3&moneyed=1&pack-lime-fat=25&own-lime-fat-free-ca-o=91&reason=At+a+price'
    expect(openAddress('job', `/es/recipes/hot-lime/job?${rest}`, null)).toBe(
      `/es/recipes/hot-lime/job?${rest}`,
    )
    expect(openAddress('job', '/recipes/hot-lime/job?money=EUR&is=0123456789', null)).toBe(
      '/recipes/hot-lime/job',
    )
  })

  it('takes from other sheets the name alone: hours are an input there', () => {
    expect(openAddress('cure', '/work-out/cure?hours=12&label=Barn&rate=2', null)).toBe(
      '/work-out/cure?hours=12&rate=2',
    )
  })
})

describe('copyOf(kept)', () => {
  it('tells nothing of what the job costs', () => {
    const printed = [
      { label: 'Mortar to make', value: '100 L' },
      { label: 'Total, EUR', value: '1,234.56', cost: true as const },
    ]
    const copy = copyOf(kept({ figures: { printed, openDigest: 'fedcba9876' } }))
    expect(copy).toMatchObject({
      digest: 'fedcba9876',
      address: '/recipes/hot-lime/job?use=pointing&area=12&is=fedcba9876',
    })
    expect(copy.figures).toEqual([{ label: 'Mortar to make', value: '100 L' }])
    expect(JSON.stringify(copy)).not.toMatch(/EUR|1,234|14\.20|price/)
  })

  it('tells no digest that covers costs, also of a sheet that was kept without another', () => {
    const printed = [{ label: 'Total', value: '1234.56', cost: true as const }]
    const copy = copyOf(kept({ figures: { printed } }))
    expect(JSON.stringify(copy)).not.toContain('0123456789')
    expect(workedOn.safeParse(copy).success).toBe(true)
  })

  it('fits a body, as many figures as a sheet may print', () => {
    const printed = Array.from({ length: MOST_PRINTED }, (_, k) => ({
      label: `${k} ${'m'.repeat(590)}`,
      value: 'x'.repeat(6000),
    }))
    expect(workedOn.safeParse(copyOf(kept({ figures: { printed } }))).success).toBe(true)
    const more = copyOf(kept({ figures: { printed: [...printed, { label: 'One more', value: '1' }] } }))
    expect(workedOn.safeParse(more).success).toBe(false)
  })

  it('is asked for by the form of every entry that may rest on a sheet', () => {
    for (const kind of ['case', 'visit', 'recipe', 'material'] as const)
      expect(Object.keys(bodyTree(kind).fields)).toContain('sheets')
  })
})
