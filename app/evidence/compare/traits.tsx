import type { Comparison } from '#lib/api/evidence-compare.ts'
import { DIFFERS_MUCH, type TraitSpread } from '#lib/api/evidence-traits.ts'
import type { Trait } from '#lib/search/works.ts'
import { DataTable } from '../../_ui/data-table.tsx'
import { facetLabel } from '../../_ui/find/labels.ts'
import { Fold } from '../../_ui/fold.tsx'
import { inSentence } from '../../_ui/label.ts'
import { Notice } from '../../_ui/notice.tsx'
import { Section } from '../../_ui/section.tsx'
import { formatList } from '../../_words/format.ts'
import { words } from '../../_words/index.ts'
import { percent } from '../figures.ts'
import type { Labels } from './differences.tsx'

const t = words('evidence')
/** The most kinds of one trait that are listed; the rest are rare. */
const MOST_VALUES = 6

/** A plain warning where the groups differ much in more than what they were chosen by. */
export function TraitWarning({ comparison: { traits } }: { comparison: Comparison }) {
  const much = traits.filter(({ differsMuch, chosenBy }) => differsMuch && !chosenBy)
  if (much.length === 0) return null
  return (
    <Notice kind="caution" title={t('compare.warning')}>
      <p>
        {t('compare.warningText', {
          traits: formatList(much.map(({ trait }) => inSentence(t(`compare.traitOf.${trait}`)))),
          share: percent(DIFFERS_MUCH),
        })}
      </p>
    </Notice>
  )
}

/** What else differs between the groups, the greatest difference first. */
export function TraitSection({ comparison, labels }: { comparison: Comparison; labels: Labels }) {
  const { groups, traits } = comparison
  return (
    <Section id="traits" title={t('compare.traits')} note={t('compare.traitsNote')}>
      <p>{t('compare.rule', { share: percent(DIFFERS_MUCH) })}</p>
      <Fold summary={t('inNumbers', { title: t('compare.traits') })}>
        <DataTable
          label={t('inNumbers', { title: t('compare.traits') })}
          caption={t('inNumbers', { title: t('compare.traits') })}
          hideCaption
          columns={[
            { key: 'trait', head: t('compare.trait'), names: true },
            { key: 'value', head: t('compare.value') },
            ...groups.map(({ key }) => ({ key, head: labels.get(key) ?? key, number: true })),
            { key: 'distance', head: t('compare.distance'), number: true },
          ]}
          rows={traits.flatMap((spread) =>
            spread.values.slice(0, MOST_VALUES).map(({ value, shares }, index) => ({
              key: `${spread.trait} ${value}`,
              cells: {
                trait: index === 0 ? t(`compare.traitOf.${spread.trait}`) : <Again spread={spread} />,
                value: valueLabel(spread.trait, value),
                ...Object.fromEntries(
                  groups.map(({ key, size }) => [key, shareOf(shares[key] ?? 0, size.works)]),
                ),
                distance: index === 0 ? distanceText(spread) : null,
              },
            })),
          )}
        />
      </Fold>
    </Section>
  )
}

/** The trait's name for those who hear the table row by row. */
const Again = ({ spread: { trait } }: { spread: TraitSpread }) => (
  <span className="hidden-words">{t(`compare.traitOf.${trait}`)}</span>
)

const shareOf = (share: number, works: number) =>
  t('compare.shareOf', { share: percent(share), count: Math.round(share * works) })

const distanceText = ({ distance, differsMuch, chosenBy }: TraitSpread) =>
  chosenBy ? (
    t('compare.chosenBy', { share: percent(distance) })
  ) : differsMuch ? (
    <strong>{t('compare.much', { share: percent(distance) })}</strong>
  ) : (
    percent(distance)
  )

function valueLabel(trait: Trait, value: string): string {
  if (trait === 'reporter')
    return value === 'nobody'
      ? t('compare.nobody')
      : t(`size.reporter.${value}` as 'size.reporter.someone-else')
  if (trait === 'mixed') return t(`size.mixedOf.${value}` as 'size.mixedOf.differs')
  return facetLabel(trait, value)
}
