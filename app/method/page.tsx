import type { Metadata } from 'next'
import { content } from '#lib/content/index.ts'
import { ASSUMED } from '#lib/mortar/assumptions.ts'
import { BASES } from '#lib/mortar/range.ts'
import { COVERAGE, DRAWS } from '#lib/mortar/spread.ts'
import { SUMS_VERSION } from '#lib/mortar/version.ts'
import { alternates } from '../_ui/alternates.ts'
import { DataTable } from '../_ui/data-table.tsx'
import { Facts } from '../_ui/facts.tsx'
import { Formula } from '../_ui/formula.tsx'
import { PageHead } from '../_ui/page-head.tsx'
import { Quantity } from '../_ui/quantity.tsx'
import { Section } from '../_ui/section.tsx'
import { words } from '../_words/index.ts'
import { PracticeTable } from './practice-table.tsx'
import { YieldTable } from './yield-table.tsx'

const t = words('pages')
const SUMS = ['slaking', 'growth', 'putty', 'aggregate', 'share', 'bulking', 'yield'] as const
const ASSUMPTIONS = Object.keys(ASSUMED) as (keyof typeof ASSUMED)[]

export const generateMetadata = (): Metadata => ({
  title: t('method.title'),
  alternates: alternates('/method'),
})

/** How figures come about: what each basis means, how ranges are carried, which formulas are used. */
export default function MethodPage() {
  return (
    <>
      <PageHead title={t('method.title')} lead={t('method.lead')}>
        <p className="facts-line">
          {t('method.versions', { edition: content().edition, sums: String(SUMS_VERSION) })}
        </p>
      </PageHead>
      <Section id="basis" title={t('method.basis')} note={t('method.basisNote')}>
        <DataTable
          label={t('method.basis')}
          caption={t('method.basis')}
          hideCaption
          stack
          columns={[
            { key: 'word', head: t('method.word'), names: true },
            { key: 'meaning', head: t('method.meaning') },
          ]}
          rows={BASES.map((basis) => ({
            key: basis,
            id: `basis-${basis}`,
            cells: {
              word: words('terms')(`basis.${basis}.label`),
              meaning: words('terms')(`basis.${basis}.meaning`),
            },
          }))}
        />
      </Section>
      <Section id="ranges" title={t('method.ranges')}>
        <p>{t('method.rangesText', { draws: DRAWS, share: COVERAGE * 100 })}</p>
        <p>{t('method.rounding')}</p>
      </Section>
      <Section id="sums" title={t('method.sums')} note={t('method.sumsNote')}>
        <DataTable
          label={t('method.sums')}
          caption={t('method.sums')}
          hideCaption
          stack
          columns={[
            { key: 'sum', head: t('method.sum'), names: true },
            { key: 'formula', head: t('method.formula'), tight: true },
            { key: 'words', head: t('method.inWords') },
          ]}
          rows={SUMS.map((sum) => ({
            key: sum,
            cells: {
              sum: t(`method.sumOf.${sum}.name`),
              formula: <Formula text={t(`method.sumOf.${sum}.formula`)} />,
              words: t(`method.sumOf.${sum}.text`),
            },
          }))}
        />
      </Section>
      <Section id="assumed" title={t('method.assumed')} note={t('method.assumedNote')}>
        <Facts
          facts={Object.fromEntries(
            ASSUMPTIONS.map((name) => [
              t(`method.assumedOf.${name}`),
              <Quantity key={name} value={ASSUMED[name]} unit={ASSUMED[name].unit} />,
            ]),
          )}
        />
      </Section>
      <PracticeTable />
      <YieldTable />
      <Section id="states" title={t('method.states')}>
        <p>{t('method.statesText')}</p>
      </Section>
      <Section id="records" title={t('method.records')}>
        <p>{t('method.recordsText')}</p>
      </Section>
    </>
  )
}
