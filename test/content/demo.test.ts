import { beforeAll, describe, expect, test } from 'vitest'
import { content } from '#lib/content/index.ts'
import { type CaseBody, caseBody, type Work } from '#lib/entry/case.ts'
import { type RecipeBody, recipeBody } from '#lib/entry/recipe.ts'
import { DAMP_STATES, FAMILIES, JOINT_STATES, STANDINGS, UNIT_STATES, WORK_ENDS } from '#lib/entry/terms.ts'
import { type VisitBody, visitBody } from '#lib/entry/visit.ts'
import { type DemoEntry, readDemo } from '#lib/workflow/demo-files.ts'

/** Nothing in the demo happens after this day, so that it never reads as news. */
const NO_LATER_THAN = '2026-11-01'

interface Visit {
  readonly author: string
  readonly body: VisitBody
}

const entries = readDemo()
const last = ({ slug, revisions }: DemoEntry) => {
  const revision = revisions.at(-1)
  if (revision === undefined) throw new Error(`${slug} has no revision`)
  return revision
}
const recipeBodies = entries
  .filter(({ kind }) => kind === 'recipe')
  .flatMap(({ slug, revisions: own }) =>
    own.map(({ body }, index) => [`${slug}@${index + 1}`, recipeBody.parse(body)] as const),
  )
const revisions: ReadonlyMap<string, RecipeBody> = new Map(recipeBodies)
const allVisits = entries
  .filter(({ kind }) => kind === 'visit')
  .map((entry): Visit => ({ author: last(entry).author, body: visitBody.parse(last(entry).body) }))
const cases = new Map(
  entries
    .filter(({ kind }) => kind === 'case')
    .map((entry) => {
      const visits = allVisits.filter(({ body }) => body.case === entry.slug)
      return [entry.slug, { author: last(entry).author, body: caseBody.parse(last(entry).body), visits }]
    }),
)
const works = [...cases].flatMap(([slug, { body, visits }]) =>
  body.works.map((work) => ({ slug, work, visits: visits.filter((visit) => visit.body.work === work.id) })),
)

/** The cases for which something holds. */
const casesWhere = (holds: (body: CaseBody, visits: readonly Visit[]) => boolean): string[] =>
  [...cases].flatMap(([slug, { body, visits }]) => (holds(body, visits) ? [slug] : []))

const daysBetween = (from: string, to: string) => (Date.parse(to) - Date.parse(from)) / 86_400_000
/** The first day a date known to the day, month or year can mean. */
const firstDay = (date: string) => `${date}${'-01-01'.slice(date.length - 4)}`
const states = (visit: Visit) => [visit.body.joint, visit.body.unit].join()
const datesOf = (work: Work) =>
  [work.started, work.finished, work.ended?.on].filter((date) => date !== undefined)

describe('what the demo holds', () => {
  test('twelve recipes and forty cases, each with one to eight visits', () => {
    expect(entries.filter(({ kind }) => kind === 'recipe')).toHaveLength(12)
    expect(cases.size).toBe(40)
    expect(casesWhere((_, visits) => visits.length < 1 || visits.length > 8)).toEqual([])
  })

  test('ten cases in each of the four invented countrysides', () => {
    const inCountry = (code: string) => casesWhere((body) => body.place.country === code).length
    expect(['EE', 'SI', 'PT', 'AU'].map(inCountry)).toEqual([10, 10, 10, 10])
  })

  test('every body says that it is invented', () => {
    expect(recipeBodies.filter(([, body]) => !body.invented)).toEqual([])
    expect(casesWhere((body, visits) => !body.invented || visits.some((v) => !v.body.invented))).toEqual([])
  })

  test('every family of mortar but natural cement, every standing, every step of every scale', () => {
    const visits = allVisits.map(({ body }) => body)
    const bodies = [...revisions.values()]
    expect(new Set(bodies.map((body) => body.family))).toEqual(
      new Set(FAMILIES.filter((family) => family !== 'natural-cement')),
    )
    expect(new Set(bodies.map((body) => body.standing))).toEqual(new Set(STANDINGS))
    expect(new Set(visits.map((visit) => visit.joint))).toEqual(new Set(JOINT_STATES))
    expect(new Set(visits.map((visit) => visit.unit))).toEqual(new Set(UNIT_STATES))
    expect(new Set(visits.map((visit) => visit.damp))).toEqual(new Set(DAMP_STATES))
    expect(new Set(works.flatMap(({ work }) => work.ended?.how ?? []))).toEqual(new Set(WORK_ENDS))
  })

  test('no two visits say the same', () => {
    const said = allVisits.flatMap(({ body }) => body.seen ?? [])
    expect(said.length - new Set(said).size).toBe(0)
  })
})

describe('what the demo shows of disagreement', () => {
  test('visits that several people read, most of them alike and some a step apart', () => {
    const shared = allVisits.flatMap(({ body }) => (body.others ?? []).map((other) => ({ body, other })))
    expect(shared.length).toBeGreaterThan(10)
    const alike = shared.filter(({ body, other }) => body.joint === other.joint && body.unit === other.unit)
    expect(alike.length).toBeGreaterThan(shared.length / 2)
    expect(alike.length).toBeLessThan(shared.length)
  })

  test('one case that somebody disputes, in words that say it is invented', () => {
    const disputed = entries.flatMap(({ slug, disputes = [] }) => disputes.map((one) => ({ slug, ...one })))
    expect(disputed).toHaveLength(1)
    expect(disputed[0]?.words).toMatch(/^Invented/)
    expect(disputed[0]?.author).not.toBe(cases.get(disputed[0]?.slug ?? '')?.author)
  })
})

describe('what the demo names', () => {
  // Reading all content takes seconds where the machine is busy.
  beforeAll(() => void content(), 60_000)

  test('materials, units, rows and sources are in content', () => {
    const { materials, rows, sources, vocabularies } = content()
    const units = vocabularies.get('units')
    const unknown = recipeBodies.flatMap(([ref, body]) => [
      ...body.ingredients.filter((i) => materials.get(i.material)?.role !== i.role).map((i) => i.material),
      ...body.units.filter((unit) => !units?.has(unit)),
      ...body.follows.filter((row) => !rows.has(row)),
      ...body.sources.filter((cited) => !sources.has(cited.source)).map((cited) => `${ref} ${cited.source}`),
    ])
    const mixed = works.flatMap(({ work }) => work.mixed?.ingredients ?? [])
    expect([...unknown, ...mixed.map((i) => i.material).filter((id) => !materials.has(id))]).toEqual([])
    expect(casesWhere((body) => body.fabric.units.some(({ unit }) => !units?.has(unit)))).toEqual([])
  })

  test('every recipe follows a row and cites a source, and none in use follows a row that is a known hazard', () => {
    const { rows } = content()
    for (const [ref, body] of recipeBodies) {
      expect(body.follows.length, ref).toBeGreaterThan(0)
      expect(body.sources.length, ref).toBeGreaterThan(0)
      const followed = body.follows.map((row) => rows.get(row)?.standing)
      if (body.standing === 'in-use') expect(followed, ref).not.toContain('known-hazard')
    }
  })

  test('recipes of works and adaptations exist at the revision named', () => {
    const named = [
      ...works.flatMap(({ work }) => work.recipe ?? []),
      ...recipeBodies.flatMap(([, body]) => body.adaptedFrom ?? []),
    ]
    expect(named.filter((ref) => !revisions.has(ref))).toEqual([])
    expect(new Set(named.map((ref) => ref.replace(/@.*/, ''))).size).toBe(12)
  })

  test('two works put a recipe to a use it was not written for, as people do', () => {
    const elsewhere = works.filter(
      ({ work }) => work.recipe && !revisions.get(work.recipe)?.uses.includes(work.use),
    )
    expect(elsewhere.map(({ slug, work }) => `${slug} ${work.id}`)).toEqual([
      'currawong-marsh-lockup south',
      'loigusalu-churchyard-wall pointing-2017',
    ])
  })

  test('works, visits and mortars of a case name one another', () => {
    expect(
      casesWhere(({ works: own, mortars }, visits) => {
        const mortarIds = mortars.map(({ id }) => id)
        const workIds = own.map(({ id }) => id)
        const lost = own.some(({ mortar }) => mortar !== undefined && !mortarIds.includes(mortar))
        const twice = new Set(workIds).size < workIds.length || new Set(mortarIds).size < mortarIds.length
        return lost || twice || visits.some((visit) => !workIds.includes(visit.body.work))
      }),
    ).toEqual([])
  })

  test('positions are no finer than a tenth of a degree and nobody is asked to agree to more', () => {
    const fine = (degrees: number | undefined) =>
      degrees !== undefined && degrees !== Number(degrees.toFixed(1))
    expect(
      casesWhere(
        ({ place }) =>
          fine(place.latitude) || fine(place.longitude) || place.ownerAgreedPosition !== undefined,
      ),
    ).toEqual([])
  })
})

describe('the demo over time', () => {
  test('a visit comes after its work is finished and not after it ended', () => {
    const early = works.flatMap(({ slug, work, visits }) =>
      visits
        .filter(({ body }) => body.on < firstDay(work.finished) || body.on > (work.ended?.on ?? '9'))
        .map(({ body }) => `${slug} ${work.id} ${body.on}`),
    )
    expect(early).toEqual([])
  })

  test('a baseline is the first visit of its work, within a year of its end, and there is one at most', () => {
    const wrong = works.flatMap(({ slug, work, visits }) => {
      const days = visits.map(({ body }) => body.on)
      const baselines = visits.filter(({ body }) => body.baseline)
      const late = baselines.some(
        ({ body }) => body.on !== days.toSorted()[0] || daysBetween(firstDay(work.finished), body.on) > 300,
      )
      return baselines.length > 1 || late ? [`${slug} ${work.id}`] : []
    })
    expect(wrong).toEqual([])
  })

  test('units never heal between two visits of one work, but where observers disagree', () => {
    const healed = works.flatMap(({ slug, work, visits }) =>
      visits
        .slice(1)
        .filter(({ author: now, body }, index) => {
          const before = visits[index]
          const better =
            before !== undefined && UNIT_STATES.indexOf(body.unit) < UNIT_STATES.indexOf(before.body.unit)
          return better && before.author === now
        })
        .map(({ body }) => `${slug} ${work.id} ${body.on}`),
    )
    expect(healed).toEqual([])
  })

  test('visits are in order, and nothing is dated after October 2026 or before 2003', () => {
    expect(
      casesWhere((_, visits) => {
        const days = visits.map((visit) => visit.body.on)
        return days.join() !== days.toSorted().join()
      }),
    ).toEqual([])
    const dates = [...cases.values()].flatMap(({ body, visits }) => [
      body.recordedOn,
      ...visits.map((visit) => visit.body.on),
      ...body.works.flatMap(datesOf),
    ])
    expect(dates.filter((date) => date >= NO_LATER_THAN || date < '2003')).toEqual([])
  })

  test('a case is recorded after the first of its works was finished', () => {
    expect(
      casesWhere((body) => body.works.every((work) => firstDay(work.finished) > body.recordedOn)),
    ).toEqual([])
  })
})

describe('the demo is like life', () => {
  test('at least six cases have a work that failed', () => {
    const failed = casesWhere((body) => body.works.some((work) => work.ended?.how === 'repointed-failed'))
    expect(failed.length).toBeGreaterThanOrEqual(6)
  })

  test('works ended for another reason, and walls lost', () => {
    const ended = (how: string) => works.filter(({ work }) => work.ended?.how === how).length
    expect(ended('replaced-other-reason')).toBeGreaterThanOrEqual(3)
    expect(ended('lost')).toBeGreaterThanOrEqual(3)
  })

  test('gaps of five years and more between two visits', () => {
    const gap = (visits: readonly Visit[]) =>
      Math.max(
        0,
        ...visits.slice(1).map((visit, i) => daysBetween(visits[i]?.body.on ?? visit.body.on, visit.body.on)),
      )
    expect(casesWhere((_, visits) => gap(visits) > 5 * 365).length).toBeGreaterThanOrEqual(6)
  })

  test('two observers of one work disagree within six weeks, three times or more', () => {
    const disagreements = works.filter(({ visits }) =>
      visits.some((first) =>
        visits.some(
          (second) =>
            first.author !== second.author &&
            states(first) !== states(second) &&
            daysBetween(first.body.on, second.body.on) > 0 &&
            daysBetween(first.body.on, second.body.on) <= 43,
        ),
      ),
    )
    expect(disagreements.length).toBeGreaterThanOrEqual(3)
  })

  test('walls with several mortars, works mixed otherwise than the recipe, works with no recipe', () => {
    expect(casesWhere((body) => body.mortars.length >= 3).length).toBeGreaterThanOrEqual(2)
    const swapped = works.filter(({ work }) => {
      const stated = work.recipe && revisions.get(work.recipe)?.ingredients.map((i) => i.material)
      return stated && work.mixed?.ingredients.some((i) => !stated.includes(i.material))
    })
    expect(swapped.length).toBeGreaterThanOrEqual(5)
    expect(works.filter(({ work }) => work.recipe === undefined).length).toBeGreaterThanOrEqual(2)
  })

  test('cases with no baseline, with one visit only, with no mortar described, and with gaps in the record', () => {
    expect(casesWhere((_, visits) => visits.every((v) => !v.body.baseline)).length).toBeGreaterThanOrEqual(4)
    expect(casesWhere((_, visits) => visits.length === 1).length).toBeGreaterThanOrEqual(2)
    expect(casesWhere((body) => body.mortars.length === 0).length).toBeGreaterThanOrEqual(5)
    expect(casesWhere((body) => body.place.latitude === undefined).length).toBeGreaterThanOrEqual(5)
    expect(casesWhere((body) => body.structure.century === undefined).length).toBeGreaterThanOrEqual(2)
    expect(casesWhere((body) => body.fabric.thicknessMm === undefined).length).toBeGreaterThanOrEqual(2)
  })

  test('recipes and cases that were put right after they were published', () => {
    const revised = (kind: string) =>
      entries.filter((entry) => entry.kind === kind && entry.revisions.length > 1).length
    expect(revised('recipe')).toBeGreaterThanOrEqual(2)
    expect(revised('case')).toBeGreaterThanOrEqual(2)
  })

  test('others than the author look again in half the cases or more', () => {
    const others = [...cases.values()].filter((file) =>
      file.visits.some((visit) => visit.author !== file.author),
    )
    expect(others.length).toBeGreaterThanOrEqual(20)
  })
})
