import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeEach, describe, expect, it } from 'vitest'
import { stringify } from 'yaml'
import { caseBySlug, listCases } from '#lib/db/cases.ts'
import { closeDb, db } from '#lib/db/client.ts'
import { withdrawnEntry } from '#lib/db/entries.ts'
import { listRecipes } from '#lib/db/recipes.ts'
import { type DemoEntry, readDemo } from '#lib/workflow/demo-files.ts'
import { loadDemo } from '#lib/workflow/load-demo.ts'
import { removeDemo } from '#lib/workflow/remove-demo.ts'
import { submit } from '#lib/workflow/submit.ts'
import { verify } from '#lib/workflow/verify.ts'
import { copyTemplate } from '../support/database.ts'
import {
  CONTRIBUTOR,
  makeCase,
  makeRecipe,
  makeSubmission,
  makeVisit,
  makeWork,
  publish,
  REFERENCES,
} from '../support/make.ts'

const folder = mkdtempSync(join(tmpdir(), 'putlog-demo-'))
afterAll(() => rmSync(folder, { recursive: true, force: true }))

const recipe = (over = {}) => ({ author: 'a', note: 'First.', body: makeRecipe(over) })
const visit = (on: string, author = 'b') => {
  const { case: _, ...body } = makeVisit({ on })
  return { author, note: 'Looked.', body }
}
const FILES = {
  'recipes/adapted': recipe({ title: 'Adapted', adaptedFrom: 'plain@2' }),
  'recipes/plain': { ...recipe({ title: 'Plain again' }), revisions: [recipe({ title: 'Plain' })] },
  'cases/barn-wall': {
    author: 'c',
    note: 'Entered.',
    body: makeCase({ works: [makeWork({ recipe: 'plain@1' })] }),
    visits: [visit('2010-06-20'), visit('2015-06-20'), visit('2015-06-20', 'd')],
  },
}

let copies = 0
/** A content folder with these demo files. */
function write(files: Record<string, unknown> = FILES): string {
  const dir = join(folder, String(copies++))
  for (const [name, data] of Object.entries(files)) {
    mkdirSync(join(dir, 'demo', name, '..'), { recursive: true })
    writeFileSync(join(dir, 'demo', `${name}.yaml`), stringify(data))
  }
  return dir
}
const load = (entries: readonly DemoEntry[], restore = false) =>
  loadDemo({ entries, references: REFERENCES, restore })

beforeEach(async () => {
  await closeDb()
  process.env.DATABASE_URL = await copyTemplate(`t_${crypto.randomUUID().replaceAll('-', '')}`)
})

describe('readDemo(dir)', () => {
  it('orders recipes by what they are adapted from, then cases, then visits, each visit with its address', () => {
    expect(
      readDemo(write()).map(({ kind, slug, revisions }) => `${kind} ${slug} ${revisions.length}`),
    ).toEqual([
      'recipe plain 2',
      'recipe adapted 1',
      'case barn-wall 1',
      'visit barn-wall-2010-06-20 1',
      'visit barn-wall-2015-06-20 1',
      'visit barn-wall-2015-06-20-2 1',
    ])
  })

  it('names file, line and field of all that is wrong', () => {
    const body = { ...makeRecipe(), family: 'magic' }
    const dir = write({
      ...FILES,
      'recipes/bad': { author: 'ab', note: 'x', body },
      'cases/Bad': FILES['cases/barn-wall'],
    })
    expect(() => readDemo(dir)).toThrow(
      /content\/demo\/cases\/Bad\.yaml:1:1 the file name is not a slug\ncontent\/demo\/recipes\/bad\.yaml:1:1 author: not a single letter\ncontent\/demo\/recipes\/bad\.yaml:6:3 body\.family: /,
    )
  })

  it('reads the demo of the site itself', () => {
    const kinds = readDemo().map(({ kind }) => kind)
    expect(kinds.filter((kind) => kind === 'recipe').length).toBeGreaterThanOrEqual(12)
    expect(kinds.filter((kind) => kind === 'case').length).toBeGreaterThanOrEqual(40)
  })
})

describe('loadDemo(options)', () => {
  it('raises a dispute that a file tells of once, and leaves the answer to reviewers', async () => {
    const disputes = [{ author: 'd', words: 'Invented. It was another mortar.' }]
    const files = { ...FILES, 'cases/barn-wall': { ...FILES['cases/barn-wall'], disputes } }
    await load(readDemo(write(files)))
    const told = () => db().decision.findMany({ where: { outcome: 'dispute' } })
    expect((await told()).map(({ reviewerKey, words }) => [reviewerKey, words])).toEqual([
      ['demo-contributor-d', 'Invented. It was another mortar.'],
    ])
    expect(await db().caseIndex.count({ where: { disputed: true } })).toBe(1)
    await load(readDemo(write(files)))
    expect(await told()).toHaveLength(1)
  })

  it('submits as one person and publishes as another, and everything can be read', async () => {
    expect(await load(readDemo(write()))).toEqual({
      added: 6,
      revised: 0,
      restored: 0,
      withdrawn: 0,
      unchanged: 0,
      removed: false,
    })
    expect((await listRecipes()).recipes.map(({ slug, revision, cases }) => [slug, revision, cases])).toEqual(
      [
        ['adapted', 1, 0],
        ['plain', 2, 1],
      ],
    )
    const found = await caseBySlug('barn-wall')
    expect(found?.visits.map(({ author, body }) => [author, body.on])).toEqual([
      ['demo-contributor-b', '2010-06-20'],
      ['demo-contributor-b', '2015-06-20'],
      ['demo-contributor-d', '2015-06-20'],
    ])
    const decisions = await db().decision.findMany({ include: { revision: true } })
    for (const { reviewerKey, revision } of decisions) expect(reviewerKey).not.toBe(revision.authorKey)
    expect((await verify('no-such-folder')).findings).toEqual([])
  })

  it('writes nothing when it is there already, even when two servers load it at once', async () => {
    const entries = readDemo(write())
    const [first, second] = await Promise.all([load(entries), load(entries)])
    expect([first.added, second.added].sort()).toEqual([0, 6])
    expect(await load(entries)).toMatchObject({ added: 0, revised: 0, unchanged: 6 })
    expect(await db().revision.count()).toBe(7)
  })

  it('makes a changed file a further revision, there and back again', async () => {
    await load(readDemo(write()))
    const changed = { ...FILES, 'recipes/adapted': recipe({ title: 'Adapted anew', adaptedFrom: 'plain@2' }) }
    expect(await load(readDemo(write(changed)))).toMatchObject({ added: 0, revised: 1, unchanged: 5 })
    expect(await load(readDemo(write()))).toMatchObject({ added: 0, revised: 1, unchanged: 5 })
    const stored = await db().revision.findMany({
      where: { entry: { slug: 'adapted' } },
      orderBy: { number: 'asc' },
    })
    expect(stored.map(({ body }) => (body as { title: string }).title)).toEqual([
      'Adapted',
      'Adapted anew',
      'Adapted',
    ])
  })

  it('withdraws what has no file any more, and nothing that people wrote', async () => {
    await load(readDemo(write()))
    await publish('recipe', 'real', makeRecipe({ invented: false }))
    const { 'recipes/adapted': _, ...rest } = FILES
    expect(await load(readDemo(write(rest)))).toMatchObject({ withdrawn: 1, unchanged: 5 })
    expect(await load(readDemo(write(rest)))).toMatchObject({ withdrawn: 0, unchanged: 5 })
    expect((await listRecipes()).recipes.map(({ slug }) => slug).sort()).toEqual(['plain', 'real'])
  })

  it('lets a file drop a work together with its visits', async () => {
    await load(readDemo(write()))
    const { visits: _, ...barn } = FILES['cases/barn-wall']
    const body = makeCase({ works: [makeWork({ id: 'other-work' })] })
    const changed = { ...FILES, 'cases/barn-wall': { ...barn, body } }
    expect(await load(readDemo(write(changed)))).toMatchObject({ revised: 1, withdrawn: 3, unchanged: 2 })
    expect(await caseBySlug('barn-wall')).toMatchObject({ revision: 2, visits: [] })
    expect((await verify('no-such-folder')).findings).toEqual([])
  })

  it('leaves an entry to the people who have revised it since', async () => {
    await load(readDemo(write()))
    await submit(CONTRIBUTOR, makeSubmission({ slug: 'adapted', basedOn: 1 }), REFERENCES)
    const changed = { ...FILES, 'recipes/adapted': recipe({ title: 'Adapted anew' }) }
    expect(await load(readDemo(write(changed)))).toMatchObject({ revised: 0, unchanged: 6 })
  })

  it('loads nothing at all when one file points at nothing, and says where', async () => {
    const files = { ...FILES, 'recipes/plain': recipe({ units: ['limestone', 'cheese'] }) }
    const line =
      readFileSync(join(write(files), 'demo/recipes/plain.yaml'), 'utf8')
        .split('\n')
        .indexOf('    - cheese') + 1
    await expect(load(readDemo(write(files)))).rejects.toThrow(
      `content/demo/recipes/plain.yaml:${line}:7 units.1: unknown cheese`,
    )
    expect(await db().entry.count()).toBe(0)
  })
})

describe('removeDemo()', () => {
  it('takes out all that is invented and nothing else, and it stays out until asked for', async () => {
    const entries = readDemo(write())
    await load(entries)
    await publish('recipe', 'real', makeRecipe({ title: 'Real', invented: false }))
    expect(await removeDemo()).toBe(6)
    expect((await listRecipes()).recipes.map(({ slug }) => slug)).toEqual(['real'])
    expect((await listCases()).total).toBe(0)
    expect(await withdrawnEntry('barn-wall')).toMatchObject({ kind: 'case', title: 'Barn wall' })
    expect(await load(entries)).toMatchObject({ added: 0, removed: true })
    expect((await listRecipes()).recipes.map(({ slug }) => slug)).toEqual(['real'])
    expect(await removeDemo()).toBe(0)
    expect(await load(entries, true)).toMatchObject({ added: 0, restored: 6, removed: false })
    expect((await listCases()).total).toBe(1)
    expect(await removeDemo()).toBe(6)
    expect(await load(entries, true)).toMatchObject({ restored: 6 })
    expect((await verify('no-such-folder')).findings).toEqual([])
  })
})
