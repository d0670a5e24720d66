import type { Metadata } from 'next'
import { content } from '#lib/content/index.ts'
import { LIME_STATES, type LimeState, STANDINGS, USES } from '#lib/entry/terms.ts'
import { alternates } from '../_ui/alternates.ts'
import { inSentence, labelOf } from '../_ui/label.ts'
import { PageHead } from '../_ui/page-head.tsx'
import { oneOf, type Query } from '../_ui/query.ts'
import { Section } from '../_ui/section.tsx'
import { words } from '../_words/index.ts'
import { CenturyChart } from './chart.tsx'
import { type Compared, inOrder } from './columns.ts'
import { ComparedTable } from './compared-table.tsx'
import { CompareForm } from './form.tsx'
import { Key } from './key.tsx'
import { allRatios } from './ratios.ts'

const t = words('library')
const USUAL_STATE: LimeState = 'putty'

export const generateMetadata = (): Metadata => ({
  title: t('compare.title'),
  alternates: alternates('/compare'),
})

/** Every row on one chart: aggregate to lime over the centuries, on a chosen state of the lime. */
export default async function ComparePage({ searchParams }: { searchParams: Promise<Query> }) {
  const query = await searchParams
  const use = oneOf(USES, query.use)
  const standing = oneOf(STANDINGS, query.standing)
  const state = oneOf(LIME_STATES, query.state) ?? USUAL_STATE
  const ratios = await allRatios()
  const chosen = [...content().rows.values()].filter(
    (row) => (!use || row.uses.includes(use)) && (!standing || row.standing === standing),
  )
  const all: Compared[] = chosen.flatMap((row) => {
    const ratio = ratios[row.ref]?.[state]
    return ratio ? [{ row, ratio }] : []
  })
  const rows = all.filter(({ row }) => row.basis !== 'memory')
  const memory = all.filter(({ row }) => row.basis === 'memory')
  const caption = t('compare.caption', {
    state: inSentence(labelOf('measured-states', state)),
    use: use ? inSentence(labelOf('uses', use)) : t('compare.anyUseCaption'),
  })
  return (
    <>
      <PageHead title={t('compare.title')} lead={t('compare.lead', { rows: content().rows.size })} />
      <CompareForm use={use} standing={standing} state={state} />
      {all.length === 0 && <p className="facts-line">{t('compare.nothing')}</p>}
      {rows.length > 0 && (
        <figure className="chart-figure">
          <figcaption>{caption}</figcaption>
          <CenturyChart label={caption} rows={rows} all={all} bottom={440} />
          <Key />
          <p className="note">{t('compare.notDrawn', { count: chosen.length - all.length })}</p>
        </figure>
      )}
      {memory.length > 0 && (
        <figure className="chart-figure chart-memory">
          <figcaption>
            <strong>{t('compare.memoryTitle')}</strong> {t('compare.memoryNote')}
          </figcaption>
          <CenturyChart label={t('compare.memoryTitle')} rows={memory} all={all} bottom={300} />
        </figure>
      )}
      <Section id="read" title={t('compare.read')}>
        <p>{t('compare.readText')}</p>
        <p>{t('compare.rangeText')}</p>
        <p>{t('compare.countText')}</p>
        <p>{t('compare.agreeText')}</p>
      </Section>
      {all.length > 0 && (
        <Section id="numbers" title={t('compare.numbers')} note={t('compare.numbersNote')}>
          <ComparedTable caption={caption} compared={[...inOrder(rows), ...inOrder(memory)]} />
        </Section>
      )}
    </>
  )
}
