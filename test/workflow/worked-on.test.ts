import { v4 } from 'uuid'
import { beforeAll, describe, expect, it } from 'vitest'
import { ownKeptSheet } from '#lib/db/kept-sheets.ts'
import { recipeBySlug } from '#lib/db/recipes.ts'
import { makeKeptFigures } from '#lib/entry/kept-sheet.ts'
import { copyOf, type WorkedOn } from '#lib/entry/worked-on.ts'
import { decide } from '#lib/workflow/decide.ts'
import { deleteSheet, type Keeping, keepSheet } from '#lib/workflow/sheet-keep.ts'
import { submit } from '#lib/workflow/submit.ts'
import { workSheet } from '../../app/_kept/worked-sheet.ts'
import { startOf } from '../../app/write/begin-from.ts'
import {
  makeCase,
  makeRecipe,
  makeSubmission,
  makeVisit,
  publish,
  REFERENCES,
  REVIEWER,
  verdictOn,
} from '../support/make.ts'
import { makePerson, type Person } from '../support/people.ts'

let mason: Person
let other: Person
beforeAll(async () => {
  mason = await makePerson()
  other = await makePerson()
})

/** A sheet that this person keeps, as it is copied into a body. */
async function kept({ member, key }: Person, over: Partial<Keeping> = {}): Promise<WorkedOn> {
  const { id } = await keepSheet(member, {
    id: v4(),
    name: 'Sample from the plinth',
    note: 'For nobody else.',
    calculation: 'sample',
    address: '/work-out/sample?dry-g=100&is=0123456789',
    system: 'metric',
    figures: makeKeptFigures({
      inputs: ['Dry sample: 100 g'],
      blocks: [],
      printed: [{ label: 'Aggregate to lime', value: '1 : 2.9 (2.6–3.3)' }],
    }),
    recipe: null,
    edition: '2026-11',
    sums: 3,
    digest: '0123456789',
    ...over,
  })
  const sheet = await ownKeptSheet(key, id)
  if (sheet === null) throw new Error('nothing was kept')
  return copyOf(sheet)
}

const send = (person: Person, slug: string, sheets: WorkedOn[], basedOn: number | null = null) =>
  submit(person.member, makeSubmission({ slug, basedOn, body: { ...makeRecipe(), sheets } }), REFERENCES)

const told = (code: string) => ({ code: 'invalid', faults: [{ field: 'sheets.0.sheet', code }] })

describe('an entry that rests on a kept sheet', () => {
  it('holds a copy of the figures, and none of the note', async () => {
    const copy = await kept(mason)
    await send(mason, 'rests', [{ ...copy, of: 'The mortar found in the wall.' }])
    await decide(REVIEWER, verdictOn({ slug: 'rests', number: 1 }))
    const { body } = (await recipeBySlug('rests')) ?? {}
    expect(body?.sheets).toEqual([{ ...copy, of: 'The mortar found in the wall.' }])
    expect(body?.sheets?.[0]?.figures).toEqual([{ label: 'Aggregate to lime', value: '1 : 2.9 (2.6–3.3)' }])
    expect(JSON.stringify(body)).not.toContain('For nobody else.')
  })

  it('passes no sheet on to what somebody adapts from it', async () => {
    const blank = { kind: '', from: '', back: '', adapt: '', of: '', work: '', late: '' }
    const sheetsOf = async (asked: typeof blank) => {
      const { typed = {} } = (await startOf(other.member, asked)) ?? {}
      expect(typed).toHaveProperty('title')
      return Object.keys(typed).filter((name) => name.startsWith('sheets.'))
    }
    expect(await sheetsOf({ ...blank, adapt: 'rests@1' })).toEqual([])
    expect(await sheetsOf({ ...blank, from: 'rests@1' })).not.toEqual([])
  })

  it('stays as it was published when the sheet is deleted, and so may its next version, whoever writes it', async () => {
    const copy = await kept(mason)
    await send(mason, 'outlives', [copy])
    await decide(REVIEWER, verdictOn({ slug: 'outlives', number: 1 }))
    await deleteSheet(mason.member, { id: copy.sheet })
    expect((await recipeBySlug('outlives'))?.body.sheets).toEqual([copy])
    await send(other, 'outlives', [{ ...copy, of: 'The plinth.' }], 1)
    await expect(send(other, 'elsewhere', [copy])).rejects.toMatchObject(told('unknown-sheet'))
  })

  it('takes nobody else’s sheet, no figures that were not kept, and no sheet twice', async () => {
    const copy = await kept(mason)
    await expect(send(other, 'not-theirs', [copy])).rejects.toMatchObject(told('unknown-sheet'))
    const better = { ...copy, figures: [{ label: 'Aggregate to lime', value: '1 : 2' }] }
    await expect(send(mason, 'better', [better])).rejects.toMatchObject(told('unknown-sheet'))
    const away = { ...copy, address: 'https://elsewhere.example/' }
    await expect(send(mason, 'away', [away])).rejects.toMatchObject(told('unknown-sheet'))
    await expect(send(mason, 'twice', [copy, copy])).rejects.toMatchObject({
      faults: [{ field: 'sheets.1.sheet', code: 'repeated' }],
    })
  })

  it('publishes nothing of what a job costs, and still holds the copy against the sheet', async () => {
    await publish('recipe', 'priced', makeRecipe())
    const costs = 'price-lime-fat=1414.25&pack-lime-fat=25&hours=12.5&rate=31.75&money=XQD'
    const eight = Array.from({ length: 7 }, (_, k) => `use-${k + 2}=plaster&area-${k + 2}=1${k}`).join('&')
    const address = `/recipes/priced/job?use=pointing-rubble&area=12&${eight}&${costs}`
    const working = await workSheet(address)
    if (!working?.ok) throw new Error(JSON.stringify(working))
    const { sheet } = working
    const copy = await kept(mason, {
      ...{ calculation: 'job', name: 'Eight works', address: sheet.address, figures: sheet.figures },
      ...{ recipe: { ...sheet.recipe, title: 'Lime and pit sand' } as Keeping['recipe'] },
      ...{ edition: sheet.versions.edition, sums: sheet.versions.sums, digest: sheet.versions.digest },
    })
    expect(JSON.stringify(sheet.figures)).toContain('XQD')
    expect(JSON.stringify(copy)).not.toMatch(/XQD|1414|31\.75|price-|rate=|hours=|money=/)
    expect(copy.address).toContain('pack-lime-fat=25')
    expect(copy.figures.length).toBe(sheet.figures.printed.filter(({ cost }) => !cost).length)
    // Whoever opens the published address is shown the same figures, and told of no change.
    const [, query = ''] = copy.address.split('?')
    const open = await workSheet(copy.address)
    if (!open?.ok) throw new Error('the published address gives no sheet')
    expect(open.sheet.versions.digest).toBe(new URLSearchParams(query).get('is'))
    expect(open.sheet.figures.printed).toEqual(sheet.figures.printed.filter(({ cost }) => !cost))
    const whole = { ...copy, address: sheet.address }
    await expect(send(mason, 'tells-costs', [whole])).rejects.toMatchObject(told('unknown-sheet'))
    await expect(send(mason, 'tells-none', [copy])).resolves.toMatchObject({ number: 1 })
  })

  it('may be a case or a visit too', async () => {
    const copy = await kept(mason)
    const body = { ...makeCase(), sheets: [copy] }
    await submit(mason.member, makeSubmission({ kind: 'case', slug: 'rests-wall', body }), REFERENCES)
    await decide(REVIEWER, verdictOn({ slug: 'rests-wall', number: 1 }))
    const visit = { ...makeVisit({ case: 'rests-wall' }), sheets: [copy] }
    const sent = submit(
      mason.member,
      makeSubmission({ kind: 'visit', slug: 'rests-visit', body: visit }),
      REFERENCES,
    )
    await expect(sent).resolves.toMatchObject({ number: 1 })
    const stolen = submit(
      other.member,
      makeSubmission({ kind: 'visit', slug: 'stolen', body: visit }),
      REFERENCES,
    )
    await expect(stolen).rejects.toMatchObject(told('unknown-sheet'))
  })
})
