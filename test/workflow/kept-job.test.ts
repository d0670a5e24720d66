import { v4 } from 'uuid'
import { beforeAll, describe, expect, it } from 'vitest'
import { withdraw } from '#lib/workflow/withdraw.ts'
import { partsOf, type WorkedSheet, workSheet } from '../../app/_kept/worked-sheet.ts'
import { makeRecipe, publish, STEWARD } from '../support/make.ts'

const JOB = '/recipes/lime-and-sand/job?use=pointing-rubble&area=12&units=us'

beforeAll(async () => {
  await publish('recipe', 'lime-and-sand', makeRecipe())
  const richer = makeRecipe().ingredients.map((one) =>
    one.role === 'aggregate' ? { ...one, parts: { low: 1, high: 1 } } : one,
  )
  await publish('recipe', 'lime-and-sand', makeRecipe({ ingredients: richer }), 1)
})

async function worked(address: string, latest = false): Promise<WorkedSheet> {
  const working = await workSheet(address, { latest })
  if (!working?.ok) throw new Error(`nothing came of ${address}: ${JSON.stringify(working)}`)
  return working.sheet
}

describe('workSheet(address) of a job', () => {
  it('follows the revision that the address names, and that of today when asked', async () => {
    const first = await worked(`${JOB}&r=1`)
    expect(first).toMatchObject({
      calculation: 'job',
      title: 'Pointing rubble',
      system: 'us',
      recipe: { slug: 'lime-and-sand', revision: 1, title: 'Lime and pit sand', invented: true },
    })
    expect(partsOf(first.address)?.typed).toMatchObject({ r: '1', area: '12', is: first.versions.digest })
    const today = await worked(first.address, true)
    expect(today.recipe?.revision).toBe(2)
    expect(today.versions.digest).not.toBe(first.versions.digest)
    expect((await worked(`${JOB}&r=none`)).recipe?.revision).toBe(2)
  })

  it('keeps the figures in the units that the sheet is shown in', async () => {
    const { figures } = await worked(JOB)
    const job = figures.blocks.find((block) => 'name' in block && block.name === 'job')
    if (job?.kind !== 'figures') throw new Error('a job has figures')
    expect(job.figures.find(({ name }) => name === 'made')?.unit).toBe('ft3')
    expect(job.figures.find(({ name }) => name === 'water-first')?.unit).toBe('gal')
  })

  it('says what is wrong with its inputs, and takes no examples for a sheet', async () => {
    expect(await workSheet(JOB.replace('12', 'wide'))).toMatchObject({
      ok: false,
      sentences: [expect.stringContaining('“wide” is not a number')],
    })
    expect(await workSheet('/recipes/lime-and-sand/job')).toMatchObject({ ok: false })
  })

  it('is nothing where the recipe is not published any more, or never was', async () => {
    await withdraw(STEWARD, { key: v4(), slug: 'lime-and-sand', words: 'It scorched the wall.' })
    expect(await workSheet(JOB, { latest: true })).toBeNull()
    expect(await workSheet(JOB.replace('lime-and-sand', 'no-such'))).toBeNull()
  })
})
