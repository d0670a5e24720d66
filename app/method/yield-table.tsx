import { content } from '#lib/content/index.ts'
import { AGREES_PERCENT, compareYields } from '#lib/mortar/yield-tables.ts'
import { DataTable } from '../_ui/data-table.tsx'
import { materialLabel } from '../_ui/label.ts'
import { Quantity } from '../_ui/quantity.tsx'
import { Section } from '../_ui/section.tsx'
import { BasisMark, SourceText } from '../_ui/source-mark.tsx'
import { formatNumber } from '../_words/format.ts'
import { words } from '../_words/index.ts'

const LIME = 'lime-cl90'
const SAND = 'sand-sharp'
const CEMENT = 'portland-cement'

/** As many draws as for the sayings, worked once too. */
let compared: ReturnType<typeof compareYields> | undefined

function compare() {
  const { materials } = content()
  const [lime, sand, cement] = [LIME, SAND, CEMENT].map((id) => materials.get(id)?.properties)
  return lime && sand && cement && compareYields({ lime, sand, cement })
}

/** What books say a heap of binder and sand makes beside what the sums make of it, disagreements included. */
export function YieldTable() {
  const t = words('steps')
  compared ??= compare()
  if (compared?.ok !== true) return null
  return (
    <Section id="yields" title={t('yields.title')} note={t('yields.note', { share: AGREES_PERCENT })}>
      <DataTable
        label={t('yields.title')}
        caption={t('yields.caption', { lime: materialLabel(LIME), sand: materialLabel(SAND) })}
        stack
        columns={[
          { key: 'mix', head: t('yields.mix'), names: true },
          { key: 'said', head: t('yields.said'), tight: true },
          { key: 'ours', head: t('yields.ours'), tight: true },
          { key: 'off', head: t('yields.off'), tight: true },
          { key: 'reason', head: t('yields.reason') },
        ]}
        rows={compared.value.map((one) => ({
          key: `${one.book} ${one.sandParts}`,
          cells: {
            mix: (
              <>
                {t(`yields.binder.${one.binder}`, { sand: formatNumber(one.sandParts) })}
                <span className="note block">
                  {t(`yields.book.${one.book}`)}{' '}
                  {one.source === undefined ? (
                    <BasisMark basis={one.basis} />
                  ) : (
                    <SourceText text={one.source} basis={one.basis} />
                  )}
                </span>
              </>
            ),
            said: formatNumber(one.said, 2),
            ours: <Quantity value={one.ours} unit="1" />,
            off: t('yields.percent', { off: formatNumber(Math.round(one.differencePercent)) }),
            reason: one.reason === null ? t('yields.agrees') : t(`yields.reasonOf.${one.reason}`),
          },
        }))}
      />
    </Section>
  )
}
