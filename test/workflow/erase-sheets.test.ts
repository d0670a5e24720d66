import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { v4 } from 'uuid'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { listActs } from '#lib/db/audit.ts'
import { closeDb, db } from '#lib/db/client.ts'
import { type KeptSheet, ownKeptSheet } from '#lib/db/kept-sheets.ts'
import { backup } from '#lib/workflow/backup.ts'
import { type Erasure, eraseBody } from '#lib/workflow/erase.ts'
import { clearSheets } from '#lib/workflow/erase-sheets.ts'
import { restoreBackup } from '#lib/workflow/restore-backup.ts'
import { type Keeping, keepSheet } from '#lib/workflow/sheet-keep.ts'
import { verify } from '#lib/workflow/verify.ts'
import { workSheet } from '../../app/_kept/worked-sheet.ts'
import { copyTemplate } from '../support/database.ts'
import { makeCase, makeRecipe, publish, STEWARD } from '../support/make.ts'
import { makePerson, type Person } from '../support/people.ts'

const dataDir = mkdtempSync(join(tmpdir(), 'putlog-erase-sheets-'))
afterAll(() => rmSync(dataDir, { recursive: true, force: true }))

let keeper: Person
let other: Person
beforeAll(async () => {
  ;[keeper, other] = [await makePerson(), await makePerson()]
})

const TITLE = 'Lime of the widow Ransome'
const REASON = 'It 100 % ruined the house_of \\ Ransome.'
const order = (slug: string, number = 1): Erasure => ({
  ...{ key: v4(), slug, number, ground: 'personal-data', words: 'It named the owner of a house.' },
})

/** A job worked from this revision, to be kept. */
async function work(slug: string, r: number, over: Partial<Keeping> = {}): Promise<Keeping> {
  const typed = 'use=pointing-rubble&area=12&override=yes&reason=My+own+reason'
  const working = await workSheet(`/recipes/${slug}/job?${typed}&r=${r}`)
  if (!working?.ok) throw new Error(`nothing came of ${slug}: ${JSON.stringify(working)}`)
  const { calculation, address, system, versions, recipe, figures } = working.sheet
  const { edition, sums, digest } = versions
  return {
    ...{ id: v4(), name: 'West face', note: '', calculation, address, system, recipe, figures },
    ...{ edition, sums, digest, ...over },
  }
}

async function keep(person: Person, slug: string, r: number, over: Partial<Keeping> = {}): Promise<string> {
  const { id } = await keepSheet(person.member, await work(slug, r, over))
  return id
}

async function sheetOf({ key }: Person, id: string): Promise<KeptSheet> {
  const sheet = await ownKeptSheet(key, id)
  if (sheet === null) throw new Error('nothing is kept')
  return sheet
}
const rowOf = async (id: string) => {
  const [row] = await db().$queryRaw<
    { row: string }[]
  >`SELECT to_jsonb(t)::text AS row FROM "KeptSheet" t WHERE id = ${id}::uuid`
  return row?.row ?? ''
}
/** How many statements wait for a lock. */
const waiting = async () => {
  const rows = await db().$queryRaw<unknown[]>`
    SELECT FROM pg_stat_activity WHERE datname = current_database() AND wait_event_type = 'Lock'`
  return rows.length
}
const noticesOf = ({ figures }: KeptSheet) =>
  figures.blocks.flatMap((block) => (block.kind === 'notice' ? [block.text] : []))

describe('eraseBody(actor, erasure) of a recipe', () => {
  let ids: Record<'titled' | 'plain', string>
  let before: KeptSheet
  beforeAll(async () => {
    const named = makeRecipe({ title: TITLE, standing: 'historical-only', standingReason: REASON })
    await publish('recipe', 'named', named)
    ids = {
      titled: await keep(keeper, 'named', 1, { name: `${TITLE}, north wall`, note: `After “${TITLE}”.` }),
      plain: await keep(other, 'named', 1),
    }
    before = await sheetOf(other, ids.plain)
    expect(noticesOf(before)).toEqual([expect.stringContaining(REASON)])
    await publish('recipe', 'named', makeRecipe({ title: 'Lime and sand' }), 1)
    await eraseBody(STEWARD, order('named'))
  })

  it('takes its words out of the sheets that anybody keeps of it, and says when and why', async () => {
    const after = await sheetOf(other, ids.plain)
    expect(after.erased).toMatchObject({ words: 'It named the owner of a house.' })
    expect(after.recipe).toMatchObject({ slug: 'named', revision: 1, title: null })
    const titled = await sheetOf(keeper, ids.titled)
    expect([titled.name, titled.note]).toEqual(['[…], north wall', 'After “[…]”.'])
    for (const id of Object.values(ids)) expect(await rowOf(id)).not.toMatch(/Ransome|ruined/)
  })

  it('leaves figures, inputs, drawings and working as they were, and the owner’s own reason', async () => {
    const after = await sheetOf(other, ids.plain)
    const rest = ({ figures }: KeptSheet) => ({
      ...figures,
      blocks: figures.blocks.filter(({ kind }) => kind !== 'notice'),
    })
    expect(rest(after)).toEqual(rest(before))
    expect(noticesOf(after)).toEqual([noticesOf(before)[0]?.replace(REASON, '[…]')])
    expect(noticesOf(after)[0]).toContain('My own reason')
    const { name, note, address, digest, edition, sums, createdAt } = before
    expect(after).toMatchObject({ name, note, address, digest, edition, sums, createdAt })
  })

  it('tells the owners and writes down how many sheets it reached', async () => {
    for (const { key } of [keeper, other])
      expect(await db().notice.count({ where: { forKey: key, what: 'erased' } })).toBe(1)
    const { lines } = await listActs({ act: 'erase-body', subject: 'named' })
    expect(lines).toMatchObject([{ detail: { number: 1, sheets: 2 } }])
  })

  it('takes a newer version’s reason out of sheets of an older one, and leaves what that one told', async () => {
    await publish('recipe', 'older', makeRecipe({ title: 'Older lime' }))
    const worse = makeRecipe({ title: 'Newer lime', standing: 'known-hazard', standingReason: REASON })
    await publish('recipe', 'older', worse, 1)
    const id = await keep(keeper, 'older', 1)
    expect(noticesOf(await sheetOf(keeper, id))).toEqual([expect.stringContaining(REASON)])
    await eraseBody(STEWARD, order('older', 2))
    const after = await sheetOf(keeper, id)
    expect(after.recipe?.title).toBe('Older lime')
    expect(noticesOf(after)).toEqual([expect.stringContaining('[…]')])
    expect(await rowOf(id)).not.toContain('Ransome')
  })

  it('takes the whole reason out where it tells the title too', async () => {
    const reason = `${TITLE} ruined a house.`
    const body = { title: TITLE, standing: 'known-hazard', standingReason: reason } as const
    await publish('recipe', 'within', makeRecipe(body))
    const id = await keep(keeper, 'within', 1)
    await eraseBody(STEWARD, order('within'))
    expect(await rowOf(id)).not.toMatch(/Ransome|ruined/)
  })

  it('leaves sheets of other versions alone that show none of its words, and words that others tell too', async () => {
    await publish('recipe', 'shared', makeRecipe({ title: 'Shared lime' }))
    const id = await keep(keeper, 'shared', 1)
    const worse = { standing: 'known-hazard', standingReason: REASON } as const
    await publish('recipe', 'shared', makeRecipe({ title: 'Shared lime', ...worse }), 1)
    const row = await rowOf(id)
    await eraseBody(STEWARD, order('shared', 2))
    expect(await rowOf(id)).toBe(row)
    // Nor was it held meanwhile, as a row is that is read to be looked through.
    expect(await db().$queryRaw`SELECT xmax::text FROM "KeptSheet" WHERE id = ${id}::uuid`).toEqual([
      { xmax: '0' },
    ])
  })

  it('reaches every sheet of the recipe, however many there are', async () => {
    await publish('recipe', 'many', makeRecipe({ title: TITLE }))
    const id = await keep(await makePerson(), 'many', 1)
    await db().$executeRaw`
      INSERT INTO "KeptSheet" SELECT (jsonb_populate_record(t, jsonb_build_object('id', gen_random_uuid()))).*
      FROM "KeptSheet" t, generate_series(1, 250) WHERE id = ${id}::uuid`
    await eraseBody(STEWARD, order('many'))
    expect(await db().keptSheet.count({ where: { recipeSlug: 'many', recipeTitle: null } })).toBe(251)
    const { lines } = await listActs({ act: 'erase-body', subject: 'many' })
    expect(lines).toMatchObject([{ detail: { sheets: 251 } }])
  })

  it('finds them by an index', async () => {
    const plan = await db().$transaction(async (tx) => {
      await tx.$executeRaw`SET LOCAL enable_seqscan = off`
      return tx.$queryRaw<
        { 'QUERY PLAN': string }[]
      >`EXPLAIN SELECT FROM "KeptSheet" WHERE "recipeSlug" = 'many' ORDER BY id LIMIT 100 FOR UPDATE`
    })
    expect(plan.map((row) => row['QUERY PLAN']).join('\n')).toContain('KeptSheet_recipe')
  })

  it('asks nothing of kept sheets where the entry is no recipe: they are worked from recipes alone', async () => {
    await publish('case', 'wall', makeCase())
    const entry = await db().entry.findUniqueOrThrow({
      where: { slug: 'wall' },
      include: { revisions: true },
    })
    const [going] = entry.revisions
    if (going === undefined) throw new Error('nothing was written')
    await db().$transaction(async (tx) => {
      expect(await clearSheets(tx, entry, going, new Date())).toEqual([])
      expect(
        await tx.$queryRaw`SELECT FROM pg_locks
        WHERE pid = pg_backend_pid() AND relation = '"KeptSheet"'::regclass`,
      ).toEqual([])
    })
  })

  it('keeps no sheet that shows words of what was erased since it was worked out', async () => {
    await publish('recipe', 'meanwhile', makeRecipe({ title: TITLE }))
    const worse = { standing: 'known-hazard', standingReason: REASON } as const
    await publish('recipe', 'meanwhile', makeRecipe({ title: 'Meanwhile bad', ...worse }), 1)
    // Its title is the first version's own, and its reason the second's.
    const [first, second] = [await work('meanwhile', 1), await work('meanwhile', 2)]
    expect(JSON.stringify(first.figures)).toContain('Ransome')
    await eraseBody(STEWARD, order('meanwhile', 2))
    for (const sheet of [first, second])
      await expect(keepSheet(keeper.member, sheet)).rejects.toMatchObject({ code: 'conflict' })
    expect(await db().keptSheet.count({ where: { recipeSlug: 'meanwhile' } })).toBe(0)
  })

  it('keeps none that was worked out while an erasure was under way', async () => {
    await publish('recipe', 'under-way', makeRecipe({ title: TITLE }))
    const first = await keep(other, 'under-way', 1)
    const { erasing, keeping } = await db().$transaction(async (tx) => {
      // The erasure is decided and not yet done: it waits for this sheet. Readers are still shown what goes.
      await tx.$executeRaw`SELECT FROM "KeptSheet" WHERE id = ${first}::uuid FOR UPDATE`
      const erasing = eraseBody(STEWARD, order('under-way'))
      await expect.poll(waiting, { timeout: 20_000 }).toBe(1)
      const keeping = keepSheet(keeper.member, await work('under-way', 1)).catch(({ code }) => code)
      await expect.poll(waiting, { timeout: 20_000 }).toBe(2)
      return { erasing, keeping }
    })
    expect(await keeping).toBe('conflict')
    await erasing
    expect(await db().keptSheet.count({ where: { recipeSlug: 'under-way' } })).toBe(1)
    expect(await rowOf(first)).not.toContain('Ransome')
  })

  it('keeps those that show none, whenever they were worked out', async () => {
    await publish('recipe', 'beside', makeRecipe({ title: TITLE }))
    await publish('recipe', 'beside', makeRecipe({ title: 'Beside sand' }), 1)
    const before = await work('beside', 2)
    await eraseBody(STEWARD, order('beside'))
    const { id } = await keepSheet(keeper.member, before)
    for (const one of [id, await keep(keeper, 'beside', 2)]) expect(await rowOf(one)).not.toContain('Ransome')
  })
})

describe('the database', () => {
  const run = (sql: string, id: string) =>
    db().$executeRawUnsafe(`UPDATE "KeptSheet" SET ${sql} WHERE id = '${id}'`)
  const AT = `(SELECT d.at FROM "Decision" d JOIN "Entry" e ON e.id = d."entryId" WHERE e.slug = 'struck' AND d.outcome = 'erase')`
  const notice = `jsonb_path_query_first(figures, '$.blocks[*] ? (@.kind == "notice").text') #>> '{}'`
  /** Figures with the text of their first part, the notice, put otherwise. */
  const withText = (text: string) =>
    `figures = jsonb_set(figures, '{blocks,0,text}', to_jsonb((${text})::text))`
  let [struck, whole] = ['', '']
  beforeAll(async () => {
    const body = { title: TITLE, standing: 'historical-only', standingReason: REASON } as const
    await publish('recipe', 'struck', makeRecipe(body))
    await publish('recipe', 'whole', makeRecipe(body))
    whole = await keep(keeper, 'whole', 1)
    struck = await keep(keeper, 'struck', 1)
    const [before] = await db().$queryRaw<
      { figures: unknown }[]
    >`SELECT figures FROM "KeptSheet" WHERE id = ${struck}::uuid`
    await eraseBody(STEWARD, order('struck'))
    // As if the decision had been taken, and its words were still to be struck.
    await db().$executeRawUnsafe('ALTER TABLE "KeptSheet" DISABLE TRIGGER USER')
    await db().$executeRaw`UPDATE "KeptSheet" SET figures = ${JSON.stringify(before?.figures)}::jsonb,
      "recipeTitle" = ${TITLE}, "erasedAt" = NULL WHERE id = ${struck}::uuid`
    await db().$executeRawUnsafe('ALTER TABLE "KeptSheet" ENABLE ALWAYS TRIGGER kept_sheet_hold')
  })

  it.each([
    ['other words', withText(`'It is safe.'`)],
    ['words beside the mark', withText(`'[…] It is safe.'`)],
    ['no words at all', withText(`''`)],
    ['words struck without a mark', withText(`replace(${notice}, 'ruined ', '')`)],
    ['another tone', `figures = jsonb_set(figures, '{blocks,0,tone}', '"note"')`],
    ['another figure', `figures = jsonb_set(figures, '{blocks,1,figures,0,value}', '1')`],
    ['a mark for a label', `figures = jsonb_set(figures, '{blocks,1,figures,0,label}', '"[…]"')`],
    ['a part less', `figures = jsonb_set(figures, '{blocks}', (figures -> 'blocks') - 1)`],
    ['no parts', `figures = figures - 'blocks'`],
    ['other inputs', `figures = jsonb_set(figures, '{inputs}', '[]')`],
    ['another title', `"recipeTitle" = 'Safe lime'`],
    ['another address', `address = '/work-out/sand?x=1'`],
    ['another recipe', `"recipeSlug" = 'whole'`],
  ])('lets nobody put in %s where words are to be struck', async (_, sql) => {
    const row = await rowOf(struck)
    await expect(run(`${sql}, "erasedAt" = ${AT}`, struck)).rejects.toThrow(/never changed/)
    expect(await rowOf(struck)).toBe(row)
  })

  it('lets words be struck with the date of the decision alone, and once', async () => {
    const strike = `${withText(`replace(${notice}, 'house_of \\ Ransome', '[…]')`)}, "recipeTitle" = NULL`
    for (const at of ['now()', 'NULL', `${AT} + interval '1 second'`])
      await expect(run(`${strike}, "erasedAt" = ${at}`, struck)).rejects.toThrow()
    await run(`${strike}, "erasedAt" = ${AT}`, struck)
    expect(noticesOf(await sheetOf(keeper, struck))[0]).toMatch(/^It 100 % ruined the \[…\]\. /)
    await expect(run(withText(`'[…]'`), struck)).rejects.toThrow(/never changed/)
    await expect(run(`${withText(`'[…]'`)}, "erasedAt" = ${AT}`, struck)).rejects.toThrow(/never changed/)
  })

  it('lets nobody strike words of a sheet whose recipe was not erased', async () => {
    for (const at of ['now()', AT, 'NULL'])
      for (const sql of [withText(`replace(${notice}, 'ruined', '[…]')`), `"recipeTitle" = NULL`])
        await expect(run(`${sql}, "erasedAt" = ${at}`, whole)).rejects.toThrow()
    const sheet = await sheetOf(keeper, whole)
    expect([sheet.recipe?.title, sheet.erased]).toEqual([TITLE, null])
    expect(noticesOf(sheet)).toEqual([expect.stringContaining(REASON)])
  })
})

describe('verify and backup', () => {
  it('carry what was taken out: a restored record has the sheets as they are now', async () => {
    expect((await verify(dataDir)).findings).toEqual([])
    const rows = await db().keptSheet.findMany({ orderBy: { id: 'asc' } })
    const file = join(dataDir, 'sheets.jsonl.gz')
    await backup(dataDir, file)
    const here = process.env.DATABASE_URL
    await closeDb()
    process.env.DATABASE_URL = await copyTemplate(`t_${v4().replaceAll('-', '')}`)
    await restoreBackup(dataDir, file)
    expect(await db().keptSheet.findMany({ orderBy: { id: 'asc' } })).toEqual(rows)
    expect(rows.filter(({ erasedAt }) => erasedAt !== null).length).toBeGreaterThan(3)
    expect((await verify(dataDir)).findings).toEqual([])
    await closeDb()
    if (here !== undefined) process.env.DATABASE_URL = here
  })
})
