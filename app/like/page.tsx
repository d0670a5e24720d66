import type { Metadata } from 'next'
import { caseBySlug } from '#lib/db/cases.ts'
import { likeCases, wallAskedOf, wallAskedQuery, wallOfCase } from '#lib/search/index.ts'
import { alternates } from '../_ui/alternates.ts'
import { CaseIndex } from '../_ui/case-index.tsx'
import { CautionSection, cautionsFor } from '../_ui/cautions.tsx'
import { Downloads } from '../_ui/find/downloads.tsx'
import { AddressFaults } from '../_ui/find/faults.tsx'
import { LikenessParts } from '../_ui/find/likeness.tsx'
import { InventedNotice } from '../_ui/invented.tsx'
import { backToStart, NextPage } from '../_ui/next-page.tsx'
import { PageHead } from '../_ui/page-head.tsx'
import { addressWith, type Choices, first, type Query, slugOf } from '../_ui/query.ts'
import { Section } from '../_ui/section.tsx'
import { words } from '../_words/index.ts'
import { FamiliesUsed } from './families-used.tsx'
import { RowsForUse } from './rows-for-use.tsx'
import { StartedFrom } from './started-from.tsx'
import { WallForm } from './wall-form.tsx'

const t = words('find')
const PATH = '/like'
const PAGE = 10
/** How many of the cases most like a wall the families are counted over. */
const NEAR = 50

export const generateMetadata = (): Metadata => ({ title: t('like.title'), alternates: alternates(PATH) })

/** Cases by their likeness to a wall; then what was used on them and how it fared, and what the tables say. */
export default async function LikePage({ searchParams }: { searchParams: Promise<Query> }) {
  const query = await searchParams
  const asked = wallAskedOf(query)
  const from = slugOf(query.from)
  const begun = from === undefined ? null : await caseBySlug(from)
  // What is answered on the page counts; a case only gives the answers that it begins with.
  const isOpen = wallAskedQuery(asked.wall).size === 0
  const wall = (isOpen && begun && (await wallOfCase(begun.slug))) || asked.wall
  const choices: Choices = { ...groupedQuery(wallAskedQuery(wall)), from: begun?.slug }
  const start = addressWith(PATH, choices)
  const after = first(query.after)
  const filter = begun ? { except: begun.slug } : {}
  const isAsked = wallAskedQuery(wall).size > 0
  const [found, near] = isAsked
    ? await Promise.all([
        likeCases(wall, { ...filter, after, limit: PAGE }).catch(backToStart(start)),
        likeCases(wall, { ...filter, limit: NEAR }),
      ])
    : []
  return (
    <>
      <PageHead title={t('like.title')} lead={t('like.lead')} />
      {from !== undefined && <StartedFrom slug={from} title={begun?.body.title} />}
      <AddressFaults faults={asked.faults} />
      <WallForm wall={wall} from={begun?.slug} faults={asked.faults} />
      {found && near && (
        <>
          <Section id="cases" title={t('like.cases')}>
            <p role="status">{t('like.found', { count: found.total })}</p>
            <HowCounted />
            {[...found.results, ...near.results].some(({ invented }) => invented) && (
              <InventedNotice page="list" />
            )}
            <CaseIndex
              cases={found.results}
              head="h3"
              more={({ title, likeness }) => <LikenessParts title={title} likeness={likeness} />}
            />
            <NextPage path={PATH} choices={choices} after={after} next={found.next} />
            <Downloads list="like" query={start.slice(PATH.length)} />
          </Section>
          <FamiliesUsed cases={near.results} />
        </>
      )}
      <RowsForUse use={wall.use} />
      <CautionSection
        cautions={cautionsFor({ uses: wall.use === undefined ? [] : [wall.use], roles: ['lime'] })}
      />
    </>
  )
}

const HowCounted = () => (
  <details>
    <summary>{t('like.how')}</summary>
    <p>{t.rich('like.howText', { tree: (inner) => <a href="/terms/units#tree">{inner}</a> })}</p>
  </details>
)

/** Parameters with all values of one name together. */
const groupedQuery = (params: URLSearchParams): Choices =>
  Object.fromEntries([...new Set(params.keys())].map((name) => [name, params.getAll(name)]))
