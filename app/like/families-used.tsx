import type { CaseSummary } from '#lib/db/cases.ts'
import { faringOfCases } from '#lib/db/faring.ts'
import { FaringTable, LEAST_WALLS } from '../_ui/find/faring-table.tsx'
import { Section } from '../_ui/section.tsx'
import { words } from '../_words/index.ts'

/** Families of mortar on the cases most like a wall, and how those walls were last seen. */
export async function FamiliesUsed({ cases }: { cases: readonly CaseSummary[] }) {
  const t = words('find')
  if (cases.length === 0) return null
  const faring = await faringOfCases(cases.map(({ slug }) => slug))
  return (
    <Section id="families" title={t('like.families')} note={t('like.familiesNote', { count: cases.length })}>
      {cases.length < LEAST_WALLS && <p>{t('like.few', { least: LEAST_WALLS })}</p>}
      <FaringTable faring={faring} caption={t('like.families')} />
    </Section>
  )
}
