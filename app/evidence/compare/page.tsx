import type { Metadata } from 'next'
import { type Comparison, compareGroups } from '#lib/api/evidence-compare.ts'
import { END_POINTS, type EndPoint } from '#lib/evidence/index.ts'
import { caseFilterQuery } from '#lib/search/case-query.ts'
import { evidenceChoices } from '#lib/search/works.ts'
import { alternates } from '../../_ui/alternates.ts'
import { faultsOfChoice } from '../../_ui/find/asked.ts'
import { AddressFaults } from '../../_ui/find/faults.tsx'
import { InventedNotice } from '../../_ui/invented.tsx'
import { PageHead } from '../../_ui/page-head.tsx'
import { CurvePlot } from '../../_ui/plot-curve.tsx'
import { oneOf, type Query } from '../../_ui/query.ts'
import { Section } from '../../_ui/section.tsx'
import { words } from '../../_words/index.ts'
import { Lacking } from '../curve-section.tsx'
import { plotCurve, yearsOf } from '../figures.ts'
import { Honesty } from '../honesty.tsx'
import { titlesOf } from '../options.ts'
import { areSame, Differences, GroupNumbers, type Labels, Overlaps } from './differences.tsx'
import { CompareForm } from './form.tsx'
import { type Asked, groupLabel, groupsOf } from './groups.ts'
import { TraitSection, TraitWarning } from './traits.tsx'

const t = words('evidence')

export const generateMetadata = (): Metadata => ({
  title: t('compare.title'),
  alternates: alternates('/evidence/compare'),
})

/** Two or three groups of walls counted in the same way, and what else differs between them. */
export default async function ComparePage({ searchParams }: { searchParams: Promise<Query> }) {
  const query = await searchParams
  const asked = groupsOf(query)
  const endPoint = oneOf(END_POINTS, query.end) ?? 'unit-damaged'
  const [choices, comparison] = await Promise.all([
    evidenceChoices(),
    asked.groups.length < 2 ? null : compareGroups(asked.groups, endPoint),
  ])
  const titles = titlesOf(choices)
  const labels = new Map(
    asked.groups.map(({ key, filter }): [string, string] => [
      key,
      t('compare.named', { letter: key.toUpperCase(), label: groupLabel(filter, titles) }),
    ]),
  )
  return (
    <>
      <PageHead
        title={t('compare.title')}
        kicker={<a href="/evidence">{t('title')}</a>}
        lead={t('compare.lead')}
      >
        <Honesty filters={asked.groups.map(({ scope }) => scope.filter)} />
        {comparison?.groups.some(({ invented }) => invented > 0) && <InventedNotice page="list" />}
      </PageHead>
      <AddressFaults faults={[...asked.faults, ...faultsOfChoice('end', query, END_POINTS)]} />
      <CompareForm asked={asked} endPoint={endPoint} choices={choices} />
      {comparison === null ? (
        <p className="facts-line">{t('compare.choose')}</p>
      ) : (
        <>
          <Overlaps comparison={comparison} labels={labels} />
          <TraitWarning comparison={comparison} />
          <CurvesSection asked={asked} comparison={comparison} labels={labels} endPoint={endPoint} />
          {!areSame(comparison) && <TraitSection comparison={comparison} labels={labels} />}
        </>
      )}
    </>
  )
}

function CurvesSection(props: { asked: Asked; comparison: Comparison; labels: Labels; endPoint: EndPoint }) {
  const { asked, comparison, labels, endPoint } = props
  const title = t('compare.plot', { end: t(`end.${endPoint}`) })
  const curves = comparison.groups.flatMap(
    ({ key, figures }) => plotCurve(key, labels.get(key) ?? key, figures) ?? [],
  )
  return (
    <Section id="curves" title={t(`end.${endPoint}`)} note={t('curve.note')}>
      <ul>
        {comparison.groups.map(({ key, size, figures }, index) => (
          <li key={key}>
            {t.rich('compare.counted', {
              label: labels.get(key) ?? key,
              works: size.works,
              years: Math.round(yearsOf(size.watchedDays)),
              link: (text) => (
                <a href={`/evidence?${caseFilterQuery(asked.groups[index]?.scope.filter ?? {})}`}>{text}</a>
              ),
            })}
            {figures.curve === null && <Lacking figures={figures} />}
          </li>
        ))}
      </ul>
      {curves.length > 0 && (
        <>
          <figure>
            <CurvePlot
              id="plot-groups"
              title={title}
              text={t('compare.text')}
              yLabel={t('curve.y')}
              curves={curves}
              marks={[1, 2, 5, 10, 20]}
            />
          </figure>
          <GroupNumbers
            groups={comparison.groups.filter(({ figures }) => figures.curve !== null)}
            labels={labels}
          />
          <Differences comparison={comparison} labels={labels} />
        </>
      )}
    </Section>
  )
}
