import { createHash } from 'node:crypto'
import { readBody } from '#lib/entry/body.ts'
import type { CaseBody, Work } from '#lib/entry/case.ts'
import { firstDayOf, lastDayOf } from '#lib/entry/dates.ts'
import { compareMix } from '#lib/entry/mixed.ts'
import type { RecipeBody } from '#lib/entry/recipe.ts'
import {
  DAMP_STATES,
  type DampState,
  JOINT_STATES,
  type JointState,
  type Season,
  UNIT_STATES,
  type UnitState,
} from '#lib/entry/terms.ts'
import {
  type History,
  observe,
  timeToDampAgain,
  timeToDry,
  type Watched,
  watch,
} from '#lib/evidence/index.ts'
import type { OutcomeIndexModel, VisitIndexModel } from '../../../prisma/generated/models.ts'
import type { Db } from '../client.ts'
import { type EndHow, HORIZONS, stateAt } from './horizon.ts'
import { publishedRows, splitRef } from './source.ts'
import { packState, rainOf } from './state-code.ts'
import { materialsOf, usedRecipes } from './used-recipes.ts'

/** The rows that these cases must have: one for each work, told from its body and the visits indexed for it. */
export async function outcomeRows(tx: Db, ids: readonly string[]): Promise<OutcomeIndexModel[]> {
  const cases = (await publishedRows(tx, 'case', ids)).map(({ entryId, body, shape }) => ({
    entryId,
    body: readBody('case', body, shape),
  }))
  const recipes = await usedRecipes(
    tx,
    cases.flatMap(({ body }) => body.works.flatMap(({ recipe }) => recipe ?? [])),
  )
  const visits = await tx.visitIndex.findMany({
    where: { caseEntryId: { in: cases.map(({ entryId }) => entryId) } },
    orderBy: [{ on: 'asc' }, { slug: 'asc' }],
  })
  const byWork = new Map<string, VisitIndexModel[]>()
  for (const visit of visits) {
    const key = `${visit.caseEntryId} ${visit.work}`
    byWork.set(key, [...(byWork.get(key) ?? []), visit])
  }
  return cases.flatMap(({ entryId, body }) =>
    body.works.map((work) => ({
      caseEntryId: entryId,
      work: work.id,
      ...used(work, recipes),
      invented: body.invented,
      interested: hasInterests(body.interests),
      building: buildingOf(entryId, body),
      ...outcome(work, byWork.get(`${entryId} ${work.id}`) ?? []),
    })),
  )
}

/** An answer that begins with none, no or nothing declares nothing. */
const hasInterests = (interests: string) => !/^(none|no|nothing)\b/i.test(interests)

/** Records that name one locality and one kind of structure are taken to be of one building. */
function buildingOf(entryId: string, { place, structure }: CaseBody): number {
  const { country, region, locality } = place
  const name = locality === undefined ? entryId : [country, region, locality, structure.type].join('\n')
  return createHash('sha256').update(name).digest().readInt32BE()
}

function used(work: Work, recipes: ReadonlyMap<string, RecipeBody>) {
  const { recipe, use, mixed } = work
  const found = recipes.get(recipe ?? '')
  return {
    use,
    recipe: found && recipe ? splitRef(recipe).slug : null,
    family: found?.family ?? null,
    method: found?.method ?? null,
    rows: [...(found?.follows ?? [])],
    materials: materialsOf(work, recipes),
    mixed: compareMix(found, mixed),
  }
}

/** What the visits show, by lib/evidence, in days since the baseline. */
function outcome(work: Work, visits: readonly VisitIndexModel[]) {
  const last = visits.at(-1)
  const common = {
    reporter: reporterOf(visits),
    lastOn: last?.on ?? null,
    lastSeen: work.ended?.how === 'last-seen',
  }
  const seen = visits.map(seenAt)
  const watched = watch({ ...historyOf(work), visits: seen })
  if (typeof watched === 'string') return { ...common, ...NOTHING, leftOut: watched }
  const baseline = seen.indexOf(watched.baseline)
  return {
    ...common,
    leftOut: null,
    baselineOn: visits[baseline]?.on ?? null,
    watchedDays: watched.watchedDays,
    ...fates(watched),
    ...ending(watched),
    ...weather(watched),
    ...states(watched, visits.slice(baseline)),
  }
}

const NOTHING = {
  baselineOn: null,
  watchedDays: 0,
  contradicted: false,
  ...{ unitFate: null, unitFrom: null, unitTo: null, jointFate: null, jointFrom: null, jointTo: null },
  ...{ lossFate: null, lossDamaged: null, lossFrom: null, lossTo: null },
  ...{ endHow: null, endFrom: null, endTo: null },
  ...{ dryFrom: null, dryTo: null, againFrom: null, againTo: null },
  ...{ at0: null, at1: null, at2: null, at5: null, at10: null, at20: null },
}

const dayOf = (iso: string) => Date.parse(`${iso}T00:00:00Z`) / 86_400_000
const rangeOf = (partial: string) => ({ first: dayOf(firstDayOf(partial)), last: dayOf(lastDayOf(partial)) })

const historyOf = ({ finished, ended }: Work): Omit<History, 'visits'> => ({
  finished: rangeOf(finished),
  ...(ended && { ended: { how: ended.how, ...rangeOf(ended.on) } }),
})

const seenAt = ({ on, baseline, joint, unit, damp }: VisitIndexModel) => ({
  day: on.getTime() / 86_400_000,
  baseline,
  joint: JOINT_STATES.indexOf(joint as JointState),
  unit: UNIT_STATES.indexOf(unit as UnitState),
  damp: DAMP_STATES.indexOf(damp as DampState),
})

function fates(watched: Watched) {
  const unit = observe('unit-damaged', watched)
  const joint = observe('joint-worse', watched)
  const sound = observe('joint-lost-unit-sound', watched)
  const damaged = observe('joint-lost-unit-damaged', watched)
  const loss = damaged.kind === 'reached' ? damaged : sound
  const flat = (one: typeof unit) =>
    one.kind === 'impossible'
      ? { fate: one.kind, from: null, to: null }
      : { fate: one.kind, from: one.interval.from, to: one.interval.to }
  const [u, j, l] = [flat(unit), flat(joint), flat(loss)]
  return {
    contradicted: [unit, joint, loss].some((one) => one.kind !== 'impossible' && one.contradicted),
    ...{ unitFate: u.fate, unitFrom: u.from, unitTo: u.to },
    ...{ jointFate: j.fate, jointFrom: j.from, jointTo: j.to },
    ...{ lossFate: l.fate, lossFrom: l.from, lossTo: l.to },
    lossDamaged: loss.kind === 'reached' ? damaged.kind === 'reached' : null,
  }
}

/** The end of the work, which came after the last visit that saw it. */
function ending({ ended, watchedDays }: Watched) {
  if (ended === undefined) return { endHow: null, endFrom: null, endTo: null }
  const endFrom = Math.min(Math.max(watchedDays, ended.first - 1), ended.last)
  return { endHow: ended.how, endFrom, endTo: ended.last }
}

/** How long until it was found dry, and until it was found damp again. */
function weather(watched: Watched) {
  const [dry, again] = [timeToDry(watched), timeToDampAgain(watched)]
  return {
    ...{ dryFrom: dry?.from ?? null, dryTo: dry?.to ?? null },
    ...{ againFrom: again?.from ?? null, againTo: again?.to ?? null },
  }
}

/** @param visits the baseline and all after it */
function states({ ended }: Watched, visits: readonly VisitIndexModel[]) {
  const start = visits[0]?.on.getTime() ?? 0
  const dated = visits.map((visit) => ({ visit, day: (visit.on.getTime() - start) / 86_400_000 }))
  const last = ended?.last
  const counted = last === undefined ? dated : dated.filter(({ day }) => day <= last)
  const at = (index: number) => {
    const horizon = HORIZONS[index]
    const found = horizon && stateAt(horizon, counted, ended)
    return found ? codeOf(found) : null
  }
  return { at0: at(0), at1: at(1), at2: at(2), at5: at(3), at10: at(4), at20: at(5) }
}

function codeOf(found: { visit: VisitIndexModel } | { ended: EndHow }): number {
  if ('ended' in found) return packState(found)
  const { joint, unit, damp, season, daysSinceRain } = found.visit
  return packState({
    joint: joint as JointState,
    unit: unit as UnitState,
    damp: damp as DampState,
    season: season as Season,
    rain: rainOf(daysSinceRain),
  })
}

/** Of all who looked the one farthest from the work: who did it, who owns it, anyone else. */
export const REPORTERS = ['did-the-work', 'owner-or-keeper', 'someone-else'] as const
export type Reporter = (typeof REPORTERS)[number]

function reporterOf(visits: readonly VisitIndexModel[]): Reporter | null {
  const who = new Set(visits.map(({ observer }) => observer))
  if (who.size === 0) return null
  const isNear = (observer: string) => observer === 'did-the-work' || observer === 'owner-or-keeper'
  if ([...who].some((observer) => !isNear(observer))) return 'someone-else'
  return who.has('owner-or-keeper') ? 'owner-or-keeper' : 'did-the-work'
}
