import type { Metadata } from 'next'
import { COARSE, FINE, FINE_WORKS, MIDDLE, MIDDLE_WORKS } from '#lib/api/evidence-figures.ts'
import {
  BASELINE_AT_MOST_DAYS,
  BASELINE_WITHIN_DAYS,
  END_POINTS,
  LOST_TO_SIGHT_DAYS,
  MIN_WALL_YEARS,
  MIN_WALLS,
} from '#lib/evidence/index.ts'
import { alternates } from '../../_ui/alternates.ts'
import { DataTable } from '../../_ui/data-table.tsx'
import { Formula } from '../../_ui/formula.tsx'
import { PageHead } from '../../_ui/page-head.tsx'
import { Section } from '../../_ui/section.tsx'
import { SourceMark } from '../../_ui/source-mark.tsx'
import { words } from '../../_words/index.ts'
import { Honesty } from '../honesty.tsx'
import { Coverage } from './coverage.tsx'

const t = words('evidence')

/** Each formula with what it rests on. */
const FORMULAS = {
  turnbull: { source: 'turnbull-1976', basis: 'quoted' },
  incidence: { source: 'hudgens-2001', basis: 'quoted' },
  median: { source: 'brookmeyer-crowley-1982', basis: 'quoted' },
  bootstrap: { source: 'efron-1979', basis: 'quoted' },
  wilson: { source: 'wilson-1927', basis: 'quoted' },
  difference: { source: 'newcombe-1998', locator: 'method 10', basis: 'quoted' },
  score: { source: 'fay-shaw-2010', locator: 'log-rank scores of Sun', basis: 'read' },
  buildings: { source: 'liang-zeger-1986', basis: 'quoted' },
  cohen: { source: 'cohen-1960', basis: 'quoted' },
  fleiss: { source: 'fleiss-1971', basis: 'quoted' },
} as const
const FORMULA_NAMES = Object.keys(FORMULAS) as (keyof typeof FORMULAS)[]

export const generateMetadata = (): Metadata => ({
  title: t('method.title'),
  alternates: alternates('/evidence/method'),
})

/** What is counted as an outcome, by which formulas, with the site's own conventions named as such. */
export default function EvidenceMethodPage() {
  return (
    <>
      <PageHead
        title={t('method.title')}
        kicker={<a href="/evidence">{t('title')}</a>}
        lead={t('method.lead')}
      >
        <Honesty />
      </PageHead>
      <Section id="counted" title={t('method.what')}>
        <DataTable
          label={t('method.what')}
          caption={t('method.what')}
          hideCaption
          stack
          columns={[
            { key: 'end', head: t('method.end'), names: true },
            { key: 'meaning', head: t('method.meaning') },
          ]}
          rows={END_POINTS.map((endPoint) => ({
            key: endPoint,
            id: endPoint,
            cells: { end: t(`end.${endPoint}`), meaning: t(`method.endOf.${endPoint}`) },
          }))}
        />
        <p>{t('method.baseline', { within: BASELINE_WITHIN_DAYS, most: BASELINE_AT_MOST_DAYS })}</p>
        <p>{t('method.taken')}</p>
        <p>{t('method.competing')}</p>
        <p>{t('method.states')}</p>
      </Section>
      <Section id="formulas" title={t('method.intervals')}>
        <p>{t('method.intervalsText')}</p>
        <DataTable
          label={t('method.intervals')}
          caption={t('method.intervals')}
          hideCaption
          stack
          columns={[
            { key: 'name', head: t('method.name'), names: true },
            { key: 'formula', head: t('method.formula') },
            { key: 'words', head: t('method.words') },
          ]}
          rows={FORMULA_NAMES.map((name) => ({
            key: name,
            id: name,
            cells: {
              name: t(`method.formulaOf.${name}.name`),
              formula: <Formula text={t(`method.formulaOf.${name}.formula`)} />,
              words: (
                <>
                  {t(`method.formulaOf.${name}.text`)}
                  <span className="block">
                    <SourceMark {...FORMULAS[name]} />
                  </span>
                </>
              ),
            },
          }))}
        />
      </Section>
      <Section id="bands" title={t('method.bands')}>
        <p>{t('method.bandsText', { draws: FINE.resamples })}</p>
        <p>
          {t('method.large', {
            some: FINE_WORKS,
            fewer: MIDDLE.resamples,
            works: MIDDLE_WORKS,
            buckets: COARSE.buckets,
            draws: COARSE.resamples,
          })}
        </p>
        <Coverage />
        <p>{t('method.minimum', { walls: MIN_WALLS, years: MIN_WALL_YEARS })}</p>
      </Section>
      <Section id="conventions" title={t('method.conventions')}>
        <p>{t('method.lost', { days: LOST_TO_SIGHT_DAYS })}</p>
        <p>{t('method.interests')}</p>
        <p>{t('method.mix')}</p>
        <p>{t('method.leftOut')}</p>
      </Section>
    </>
  )
}
