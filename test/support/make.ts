import { v4 } from 'uuid'
import type { Member } from '#lib/access/actor.ts'
import type { WrittenKind } from '#lib/entry/body.ts'
import type { CaseBody } from '#lib/entry/case.ts'
import type { RecipeBody } from '#lib/entry/recipe.ts'
import type { VisitBody } from '#lib/entry/visit.ts'
import { decide } from '#lib/workflow/decide.ts'
import type { References } from '#lib/workflow/references.ts'
import { type Submission, type Submitted, submit } from '#lib/workflow/submit.ts'

/** Bodies, people and writes for tests: fixed values, overridable. */

export const CONTRIBUTOR: Member = { kind: 'member', key: 'mason-1', roles: ['contributor'] }
export const OTHER: Member = { kind: 'member', key: 'mason-2', roles: ['contributor'] }
export const REVIEWER: Member = { kind: 'member', key: 'reviewer-1', roles: ['contributor', 'reviewer'] }
export const STEWARD: Member = { kind: 'member', key: 'steward-1', roles: ['steward'] }

const known = (...ids: string[]) => new Map(ids.map((id) => [id, {}]))

/** Content as far as bodies point into it. */
export const REFERENCES = {
  sources: known('a-book', 'b-book'),
  rows: known('old-table#first', 'old-table#second'),
  materials: known('lime-fat', 'sand-pit'),
  vocabularies: new Map([['units', known('limestone', 'granite', 'brick')]]),
} as unknown as References

export const makeRecipe = (over: Partial<RecipeBody> = {}): RecipeBody => ({
  title: 'Lime and pit sand',
  summary: 'For rubble walls.',
  family: 'air-lime',
  uses: ['bedding-rubble', 'pointing'],
  standing: 'in-use',
  ingredients: [
    { material: 'lime-fat', role: 'lime', parts: { low: 1, high: 1 }, by: 'volume', state: 'putty' },
    { material: 'sand-pit', role: 'aggregate', parts: { low: 2.5, high: 3 }, by: 'volume', state: 'dry' },
  ],
  method: 'putty',
  units: ['limestone'],
  follows: ['old-table#first'],
  sources: [{ source: 'a-book', locator: 'p. 12' }],
  region: { country: 'EE' },
  invented: true,
  ...over,
})

export const makeWork = (over: Partial<CaseBody['works'][number]> = {}): CaseBody['works'][number] => ({
  id: 'repointing',
  title: 'Repointing',
  use: 'pointing',
  started: '2010-05',
  finished: '2010-06',
  ...over,
})

export const makeCase = (over: Partial<CaseBody> = {}): CaseBody => ({
  title: 'Barn wall',
  summary: 'A barn wall beside a ford.',
  place: { country: 'EE', region: 'Invented county' },
  structure: { type: 'farm-building' },
  fabric: { units: [{ unit: 'limestone' }], wall: 'rubble-coursed' },
  mortars: [],
  exposure: { drivingRain: 'moderate', frost: 'frequent', salts: [], ground: 'free-draining', aspect: 'W' },
  earlier: [],
  works: [makeWork()],
  interests: 'none',
  recordedOn: '2020-01-01',
  invented: true,
  ...over,
})

export const makeVisit = (over: Partial<VisitBody> = {}): VisitBody => ({
  case: 'barn-wall',
  work: 'repointing',
  on: '2010-06-20',
  baseline: true,
  season: 'summer',
  joint: 'sound',
  unit: 'sound',
  damp: 'dry',
  salts: [],
  readings: [],
  observer: { who: 'did-the-work', how: 'From a ladder.' },
  invented: true,
  ...over,
})

export const makeSubmission = (over: Partial<Submission> = {}): Submission => ({
  key: v4(),
  kind: 'recipe',
  slug: 'lime-and-sand',
  basedOn: null,
  body: makeRecipe(),
  note: 'First entry.',
  ...over,
})

/** Submits and publishes, by two people. */
export async function publish(
  kind: WrittenKind,
  slug: string,
  body: unknown,
  basedOn: number | null = null,
): Promise<Submitted> {
  const submitted = await submit(CONTRIBUTOR, makeSubmission({ kind, slug, body, basedOn }), REFERENCES)
  await decide(REVIEWER, verdictOn(submitted))
  return submitted
}

export const verdictOn = (
  { slug, number }: { slug: string; number: number },
  outcome: 'publish' | 'return' | 'decline' = 'publish',
) => ({ key: v4(), slug, number, outcome, checklist: { sources: true }, words: 'Read and checked.' })
