import { visitsByOthers } from '#lib/db/authors.ts'
import type { Published } from '#lib/db/published.ts'
import type { CaseBody } from '#lib/entry/case.ts'
import { lastDayOf, yearsBetween } from '#lib/entry/dates.ts'
import type { Quality } from '#lib/entry/facets.ts'
import type { VisitBody } from '#lib/entry/visit.ts'
import { DataTable } from '../../_ui/data-table.tsx'
import { addressWith } from '../../_ui/query.ts'
import { Section } from '../../_ui/section.tsx'
import { words } from '../../_words/index.ts'

const t = words('evidence')

type Visits = readonly Published<VisitBody>[]

interface Line {
  readonly what:
    | 'wall'
    | 'thickness'
    | 'position'
    | 'exposure'
    | 'analysis'
    | 'mix'
    | 'baseline'
    | 'photos'
    | 'second-observer'
    | 'past-five'
  readonly count: number
  /** Where there is a known number to reach. */
  readonly of?: number
  /** What lists can be filtered by. */
  readonly quality?: Quality
}

/** What a case holds and what it lacks, counted: no sum, no mark. */
export async function QualitySection(props: { body: CaseBody; visits: Visits; caseEntryId: string }) {
  const { body, visits } = props
  const byOthers = await visitsByOthers([props.caseEntryId])
  return (
    <Section id="recorded" title={t('quality.title')} note={t('quality.note')}>
      <DataTable
        label={t('quality.title')}
        caption={t('quality.title')}
        hideCaption
        columns={[
          { key: 'what', head: t('quality.what'), names: true },
          { key: 'count', head: t('quality.count'), number: true },
        ]}
        rows={linesOf(body, visits, byOthers).map(({ what, count, of, quality }) => ({
          key: what,
          cells: {
            what:
              quality === undefined ? (
                t(`quality.${what}`)
              ) : (
                <a href={addressWith('/cases', { quality })}>{t(`quality.${what}`)}</a>
              ),
            count:
              count === 0
                ? t('quality.missing')
                : of === undefined
                  ? count
                  : t('quality.of', { count, all: of }),
          },
        }))}
      />
    </Section>
  )
}

function linesOf(body: CaseBody, visits: Visits, byOthers: ReadonlySet<string>): Line[] {
  const { place, fabric, exposure, mortars, works } = body
  const samples = mortars.flatMap((mortar) => mortar.samples)
  const exposed = [exposure.drivingRain, exposure.frost, exposure.ground]
  const of = (work: string) => visits.filter((visit) => visit.body.work === work)
  const count = (which: (visit: Visits[number]) => boolean) => visits.filter(which).length
  return [
    { what: 'wall', count: fabric.units.length },
    { what: 'thickness', count: fabric.thicknessMm === undefined ? 0 : 1 },
    { what: 'position', count: place.latitude === undefined || place.longitude === undefined ? 0 : 1 },
    { what: 'exposure', count: exposed.filter((one) => one !== 'not-recorded').length, of: exposed.length },
    {
      what: 'analysis',
      count: samples.filter(({ analysis }) => analysis !== 'none').length,
      quality: 'analysis',
    },
    {
      what: 'mix',
      count: works.filter(({ mixed }) => (mixed?.ingredients.length ?? 0) > 0).length,
      of: works.length,
    },
    {
      what: 'baseline',
      count: works.filter(({ id }) => of(id).some((visit) => visit.body.baseline)).length,
      of: works.length,
    },
    {
      what: 'photos',
      count: visits.reduce((sum, visit) => sum + (visit.body.photos?.length ?? 0), 0),
      quality: 'photos',
    },
    {
      what: 'second-observer',
      count: count(({ entryId }) => byOthers.has(entryId)),
      quality: 'second-observer',
    },
    { what: 'past-five', count: count(isLate(body, visits)), quality: 'past-five' },
  ]
}

/** Five years or more after its work's baseline, or else its end: as lists count years watched. */
const isLate =
  ({ works }: CaseBody, visits: Visits) =>
  (visit: Visits[number]) => {
    const work = works.find(({ id }) => id === visit.body.work)
    const baseline = visits.find(({ body }) => body.work === visit.body.work && body.baseline)
    if (work === undefined) return false
    return yearsBetween(baseline?.body.on ?? lastDayOf(work.finished), visit.body.on) >= 5
  }
