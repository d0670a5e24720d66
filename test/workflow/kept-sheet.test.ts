import { v4 } from 'uuid'
import { beforeAll, describe, expect, it } from 'vitest'
import { listActs } from '#lib/db/audit.ts'
import { db } from '#lib/db/client.ts'
import { keptSheetsOf, ownKeptSheet } from '#lib/db/kept-sheets.ts'
import { makeKeptFigures } from '#lib/entry/kept-sheet.ts'
import { closeAccount } from '#lib/workflow/account-close.ts'
import { exportAccount } from '#lib/workflow/account-export.ts'
import { deleteSheet, type Keeping, keepSheet, MOST_SHEETS, renameSheet } from '#lib/workflow/sheet-keep.ts'
import { makePerson, type Person } from '../support/people.ts'

let mason: Person
let other: Person
let steward: Person
beforeAll(async () => {
  ;[mason, other, steward] = [
    await makePerson(),
    await makePerson(),
    await makePerson({ roles: ['contributor', 'reviewer', 'steward'] }),
  ]
})

const FIGURES = makeKeptFigures({
  inputs: ['Sand: 1000 mL'],
  printed: [{ label: 'Voids', value: '34 % (32–36)' }],
  blocks: [
    {
      kind: 'figures',
      name: 'voids',
      title: 'Voids',
      figures: [
        {
          name: 'voids',
          label: 'Voids',
          value: { low: 32, typical: 34, high: 36 },
          unit: '%',
          basis: 'derived',
        },
      ],
    },
  ],
})

const makeKeeping = (over: Partial<Keeping> = {}): Keeping => ({
  id: v4(),
  name: 'Heap by the gate',
  note: '',
  calculation: 'sand',
  address: '/work-out/sand?what=voids-water&is=0123456789',
  system: 'metric',
  figures: FIGURES,
  recipe: null,
  edition: '2026-11',
  sums: 3,
  digest: '0123456789',
  ...over,
})

const RECIPE = { slug: 'hot-lime', revision: 2, title: 'Hot lime', invented: true }

describe('keepSheet(actor, keeping)', () => {
  it('keeps what was printed and from what, for its owner alone', async () => {
    const keeping = makeKeeping({
      ...{ calculation: 'job', recipe: { ...RECIPE, standingFrom: 3 }, note: 'North side.\nIn shade.' },
    })
    const { id } = await keepSheet(mason.member, keeping)
    const { figures, address, system, edition, sums, digest, name, note } = keeping
    const [recipe, erased] = [RECIPE, null]
    expect(await ownKeptSheet(mason.key, id)).toMatchObject({
      ...{ recipe, figures, address, system, edition, sums, digest, name, note, erased },
    })
    expect((await keptSheetsOf(mason.key)).map(({ id }) => id)).toEqual([id])
    for (const { key } of [other, steward]) {
      expect(await ownKeptSheet(key, id)).toBeNull()
      expect(await keptSheetsOf(key)).toEqual([])
    }
    const { lines } = await listActs({ subject: id })
    expect(lines).toMatchObject([{ act: 'keep-sheet', actorKey: mason.key, detail: { calculation: 'job' } }])
  })

  it('answers the same id with what it kept first, also when both come at once', async () => {
    const keeping = makeKeeping()
    const both = await Promise.all([keepSheet(mason.member, keeping), keepSheet(mason.member, keeping)])
    expect(both.map(({ repeated }) => repeated).sort()).toEqual([false, true])
    await keepSheet(mason.member, { ...keeping, name: 'Another name' })
    expect((await ownKeptSheet(mason.key, keeping.id))?.name).toBe('Heap by the gate')
    await expect(keepSheet(other.member, keeping)).rejects.toMatchObject({ code: 'conflict' })
    expect(await ownKeptSheet(other.key, keeping.id)).toBeNull()
  })

  it.each([
    ['a blank name', { name: '  ' }, 'name'],
    ['a name without an end', { name: 'x'.repeat(121) }, 'name'],
    ['an address elsewhere', { address: '//elsewhere.example/work-out/sand' }, 'address'],
    [
      'figures of no form',
      { figures: { version: 2, inputs: [], printed: [], blocks: [{ kind: 'poem' }] } },
      'figures',
    ],
  ])('refuses %s and keeps nothing', async (_, over, field) => {
    const keeping = makeKeeping(over as Partial<Keeping>)
    await expect(keepSheet(mason.member, keeping)).rejects.toMatchObject({
      code: 'invalid',
      faults: [expect.objectContaining({ field: expect.stringContaining(field) })],
    })
    expect(await ownKeptSheet(mason.key, keeping.id)).toBeNull()
  })

  it('refuses a guest', async () => {
    await expect(keepSheet({ kind: 'guest' }, makeKeeping())).rejects.toMatchObject({ code: 'forbidden' })
  })

  it('stops at the most that one account may keep, in words, and goes on once one is deleted', async () => {
    const full = await makePerson()
    const ids = Array.from({ length: MOST_SHEETS - 1 }, () => v4())
    await db().keptSheet.createMany({
      data: ids.map((id) => {
        const { recipe: _, ...told } = makeKeeping({ id })
        return {
          ...told,
          figures: { ...FIGURES },
          ownerKey: full.key,
          invented: false,
          createdAt: new Date(),
        }
      }),
    })
    // Two come for the last place at once: one is kept.
    const last = [makeKeeping(), makeKeeping()]
    const came = await Promise.allSettled(last.map((one) => keepSheet(full.member, one)))
    expect(came.map(({ status }) => status).sort()).toEqual(['fulfilled', 'rejected'])
    expect(await db().keptSheet.count({ where: { ownerKey: full.key } })).toBe(MOST_SHEETS)
    await expect(keepSheet(full.member, makeKeeping())).rejects.toMatchObject({
      code: 'conflict',
      message: expect.stringContaining(`${MOST_SHEETS} sheets`),
    })
    await deleteSheet(full.member, { id: ids[0] as string })
    await keepSheet(full.member, makeKeeping())
  })
})

describe('a kept sheet', () => {
  it('lets its owner change name and note, and nobody anything else', async () => {
    const { id } = await keepSheet(mason.member, makeKeeping())
    await renameSheet(mason.member, { id, name: 'South heap', note: 'Sieve it.' })
    const kept = await ownKeptSheet(mason.key, id)
    expect(kept).toMatchObject({ name: 'South heap', note: 'Sieve it.', figures: FIGURES, sums: 3 })
    for (const { member } of [other, steward]) {
      await expect(renameSheet(member, { id, name: 'Mine', note: '' })).rejects.toMatchObject({
        code: 'not-found',
      })
      await expect(deleteSheet(member, { id })).rejects.toMatchObject({ code: 'not-found' })
    }
    expect(await ownKeptSheet(mason.key, id)).toEqual(kept)
  })

  it.each([
    ['figures', { figures: { version: 1, inputs: [], printed: [], blocks: [] } }],
    ['the address', { address: '/work-out/sand?x=1' }],
    ['that nothing was erased', { erasedAt: new Date() }],
    ['the version of the sums', { sums: 4 }],
    ['the owner', { ownerKey: 'somebody-else' }],
  ])('has %s that not even the database alters', async (_, data) => {
    const { id } = await keepSheet(mason.member, makeKeeping())
    await expect(db().keptSheet.update({ where: { id }, data })).rejects.toThrow('never changed')
    expect(await ownKeptSheet(mason.key, id)).toMatchObject({ figures: FIGURES, sums: 3 })
  })

  it('goes for good when its owner deletes it', async () => {
    const { id } = await keepSheet(mason.member, makeKeeping())
    await deleteSheet(mason.member, { id })
    expect(await ownKeptSheet(mason.key, id)).toBeNull()
    await expect(deleteSheet(mason.member, { id })).rejects.toMatchObject({ code: 'not-found' })
    const { lines } = await listActs({ subject: id })
    expect(lines.map(({ act }) => act)).toEqual(['delete-sheet', 'keep-sheet'])
  })

  it('is in what its owner exports, and goes with the account', async () => {
    const leaving = await makePerson()
    const { id } = await keepSheet(leaving.member, makeKeeping({ name: 'To take along' }))
    const own = { actor: leaving.member, accountId: leaving.id }
    let text = ''
    for await (const piece of exportAccount(own)) text += piece
    expect(JSON.parse(text).sheets).toMatchObject([{ id, name: 'To take along', figures: FIGURES }])
    await closeAccount(own)
    expect(await db().keptSheet.count({ where: { ownerKey: leaving.key } })).toBe(0)
    expect(await db().keptSheet.count({ where: { ownerKey: mason.key } })).toBeGreaterThan(0)
  })
})
