import { join } from 'node:path'
import { z } from 'zod'
import { ContentError, FaultList, type Place } from '#lib/content/fault.ts'
import { type ContentFile, readFolder } from '#lib/content/files.ts'
import { readYaml } from '#lib/content/yaml.ts'
import type { WrittenKind } from '#lib/entry/body.ts'
import { caseBody } from '#lib/entry/case.ts'
import { slug, text } from '#lib/entry/fields.ts'
import { materialBody } from '#lib/entry/material.ts'
import { recipeBody } from '#lib/entry/recipe.ts'
import { sourceBody } from '#lib/entry/source.ts'
import { visitBody } from '#lib/entry/visit.ts'

/** One invented revision: the letter of its author, what it says of itself, and its body. */
export interface DemoRevision {
  readonly author: string
  readonly note: string
  readonly body: unknown
  /** Where a field of the body stands in its file. */
  readonly placeOf: (field: string) => Place
}

/** One invented entry with its revisions, the oldest first. */
export interface DemoEntry {
  readonly kind: WrittenKind
  readonly slug: string
  readonly revisions: readonly DemoRevision[]
  /** Objections of invented hands, which nobody has answered. */
  readonly disputes?: readonly DemoDispute[]
}

export interface DemoDispute {
  readonly author: string
  readonly words: string
}

const letter = z.string().regex(/^[a-z]$/, 'not a single letter')

const written = <T extends z.ZodType>(body: T) =>
  z.strictObject({
    author: letter,
    note: z.string().min(1),
    body,
  })

const file = <T extends z.ZodType>(body: T) =>
  written(body).extend({ revisions: z.array(written(body)).default([]) })

const LONE_FILES = {
  source: file(sourceBody),
  material: file(materialBody),
  recipe: file(recipeBody),
} as const
type LoneKind = keyof typeof LONE_FILES

const visitOfFile = written(visitBody.omit({ case: true }))
const caseFile = file(caseBody).extend({
  visits: z.array(visitOfFile).default([]),
  disputes: z.array(z.strictObject({ author: letter, words: text(2000) })).default([]),
})

/**
 * The invented entries of content/demo in an order that can be loaded: sources, materials, recipes before those adapted from them,
 * then cases from the oldest record to the newest, then visits.
 *
 * @param dir the content folder
 * @throws ContentError with every fault: file, line, column and field
 */
export function readDemo(dir: string = join(process.cwd(), 'content')): readonly DemoEntry[] {
  const faults = new FaultList()
  const lone = (kind: LoneKind) =>
    readFolder(dir, `demo/${kind}s`, '.yaml').flatMap((file) => readLone(kind, file, faults))
  const [sources, materials, recipes] = [lone('source'), lone('material'), lone('recipe')]
  const files = readFolder(dir, 'demo/cases', '.yaml').flatMap((file) => readCase(file, faults))
  if (!faults.isEmpty) throw new ContentError(faults.sorted())
  const byAge = (a: CaseFile, b: CaseFile) => (a.recordedOn < b.recordedOn ? -1 : 1)
  const cases = files.sort(byAge)
  return [
    ...sources,
    ...materials,
    ...sortRecipes(recipes),
    ...cases.map(({ entry }) => entry),
    ...cases.flatMap(({ visits }) => visits),
  ]
}

function readLone(kind: LoneKind, file: ContentFile, faults: FaultList): DemoEntry[] {
  const read = readYaml<Lone>(LONE_FILES[kind], file.text, file.path, faults)
  if (read === undefined || !isSlug(file, faults)) return []
  const { revisions, ...last } = read.value
  return [
    {
      kind,
      slug: file.name,
      revisions: [...revisions, last].map(placed(read.placeOf, revisions.length)),
    },
  ]
}

interface Lone extends Omit<DemoRevision, 'placeOf'> {
  readonly revisions: readonly Omit<DemoRevision, 'placeOf'>[]
}

interface CaseFile {
  readonly recordedOn: string
  readonly entry: DemoEntry
  readonly visits: readonly DemoEntry[]
}

function readCase(file: ContentFile, faults: FaultList): CaseFile[] {
  const read = readYaml(caseFile, file.text, file.path, faults)
  if (read === undefined || !isSlug(file, faults)) return []
  const { revisions, visits, disputes, ...last } = read.value
  const days = new Map<string, number>()
  return [
    {
      recordedOn: last.body.recordedOn,
      entry: {
        kind: 'case',
        slug: file.name,
        revisions: [...revisions, last].map(placed(read.placeOf, revisions.length)),
        ...(disputes.length > 0 && { disputes }),
      },
      visits: visits.map(({ author, note, body }, index) => {
        const nth = (days.get(body.on) ?? 0) + 1
        days.set(body.on, nth)
        const placeOf = (field: string) => read.placeOf(['visits', index, 'body', ...pathOf(field)])
        return {
          kind: 'visit',
          slug: `${file.name}-${body.on}${nth === 1 ? '' : `-${nth}`}`,
          revisions: [{ author, note, body: { case: file.name, ...body }, placeOf }],
        }
      }),
    },
  ]
}

/** Earlier revisions stand in a list of their own; the last stands at the top of the file. */
const placed =
  (placeOf: (path: readonly PropertyKey[]) => Place, earlier: number) =>
  (revision: { author: string; note: string; body: unknown }, index: number): DemoRevision => ({
    ...revision,
    placeOf: (field) => placeOf([...(index < earlier ? ['revisions', index] : []), 'body', ...pathOf(field)]),
  })

const pathOf = (field: string) => field.split('.').map((key) => (/^\d+$/.test(key) ? Number(key) : key))

function isSlug(file: ContentFile, faults: FaultList): boolean {
  const ok = slug.safeParse(file.name).success
  if (!ok) faults.add({ file: file.path, line: 1, column: 1 }, 'the file name is not a slug')
  return ok
}

/** A recipe comes after the one it is adapted from; the order of file names otherwise. */
function sortRecipes(recipes: readonly DemoEntry[]): DemoEntry[] {
  const sorted: DemoEntry[] = []
  const bySlug = new Map(recipes.map((recipe) => [recipe.slug, recipe]))
  const place = (recipe: DemoEntry) => {
    if (!bySlug.delete(recipe.slug)) return
    for (const { body } of recipe.revisions) {
      const from = bySlug.get((body as { adaptedFrom?: string }).adaptedFrom?.split('@')[0] ?? '')
      if (from) place(from)
    }
    sorted.push(recipe)
  }
  for (const recipe of recipes) place(recipe)
  return sorted
}
