import type { Agreements } from '#lib/api/evidence-agree.ts'
import type { Agreement } from '#lib/evidence/index.ts'
import { DataTable } from '../_ui/data-table.tsx'
import { Section } from '../_ui/section.tsx'
import { formatNumber } from '../_words/format.ts'
import { words } from '../_words/index.ts'

const t = words('evidence')

/** How far people agree who read one visit each for themselves. */
export function AgreeSection({ agreement: { visits, scales } }: { agreement: Agreements }) {
  if (visits === 0) return null
  return (
    <Section id="agreement" title={t('agree.title')} note={t('agree.note', { visits })}>
      <DataTable
        label={t('agree.title')}
        caption={t('agree.title')}
        hideCaption
        columns={[
          { key: 'scale', head: t('agree.scale'), names: true },
          { key: 'same', head: t('agree.same'), number: true },
          { key: 'fleiss', head: t('agree.fleiss'), number: true },
          { key: 'cohen', head: t('agree.cohen'), number: true },
        ]}
        rows={scales.map(({ scale, same, fleiss, cohen }) => ({
          key: scale,
          cells: {
            scale: words('pages')(`states.${scale}`),
            same: t('quality.of', { count: same, all: visits }),
            fleiss: kappaText(fleiss),
            cohen: kappaText(cohen),
          },
        }))}
      />
    </Section>
  )
}

function kappaText(agreement: Agreement | null): string {
  if (agreement === null) return t('agree.unknown')
  const { kappa, low, high } = agreement
  return t('agree.kappa', {
    kappa: formatNumber(kappa, 2),
    low: formatNumber(low, 2),
    high: formatNumber(high, 2),
  })
}
