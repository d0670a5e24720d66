import type { Behind } from '#lib/api/evidence-behind.ts'
import type { CaseFilter } from '#lib/db/case-filter.ts'
import { QUALITIES } from '#lib/entry/facets.ts'
import { asWritten } from '../_ui/as-written.ts'
import { CaseIndex } from '../_ui/case-index.tsx'
import { DataTable } from '../_ui/data-table.tsx'
import { casesAddress } from '../_ui/find/asked.ts'
import { Fold } from '../_ui/fold.tsx'
import { InventedMark } from '../_ui/invented.tsx'
import { LaboratorySection } from '../_ui/laboratory.tsx'
import { Section } from '../_ui/section.tsx'
import { words } from '../_words/index.ts'

const t = words('evidence')

/** The cases behind the figures, and how many of them hold what makes a record worth more. */
export function CasesSection(props: {
  behind: Behind
  asked: { readonly filter: CaseFilter; readonly text: string }
}) {
  const { behind, asked } = props
  const { cases, total, quality } = behind
  return (
    <Section id="cases" title={t('cases.title')} note={t('cases.note')}>
      {total > 0 && (
        <Fold summary={t('quality.inCases')}>
          <DataTable
            label={t('quality.inCases')}
            caption={t('quality.inCases')}
            columns={[
              { key: 'what', head: t('quality.what'), names: true },
              { key: 'count', head: t('quality.count'), number: true },
            ]}
            rows={QUALITIES.map((one) => ({
              key: one,
              cells: {
                what: (
                  <a href={casesAddress('/cases', { ...asked, filter: { ...asked.filter, quality: [one] } })}>
                    {t(`quality.${one}`)}
                  </a>
                ),
                count: t('quality.of', { count: quality[one], all: total }),
              },
            }))}
          />
        </Fold>
      )}
      {cases.length === 0 ? (
        <p>{t('cases.none')}</p>
      ) : (
        <Fold summary={t('cases.list', { count: cases.length })}>
          <CaseIndex cases={cases} head="h3" />
        </Fold>
      )}
      {total > cases.length && (
        <p>
          <a href={casesAddress('/cases', asked)}>{t('cases.all', { count: total })}</a>
        </p>
      )}
    </Section>
  )
}

/** What laboratories found of the recipes and materials of these walls. */
export const LaboratoryBehind = ({
  laboratory,
  filter,
}: Pick<Behind, 'laboratory'> & { filter: CaseFilter }) => (
  <LaboratorySection
    note={t('laboratory.noteOfMany')}
    units={filter.unit ?? []}
    results={laboratory.flatMap(({ kind, slug, title, invented, results }) =>
      results.map((result) => ({
        ...result,
        of: (
          <>
            <a href={`/${kind}s/${slug}`} {...asWritten()}>
              {title}
            </a>{' '}
            {invented && <InventedMark />}
          </>
        ),
      })),
    )}
  />
)
