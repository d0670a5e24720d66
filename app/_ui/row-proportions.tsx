import type { TableRow } from '#lib/content/types.ts'
import { LIME_STATES, type LimeState } from '#lib/entry/terms.ts'
import { words } from '../_words/index.ts'
import { inEnglish } from './as-written.ts'
import { DataTable } from './data-table.tsx'
import { labelOf } from './label.ts'
import { Ratio } from './ratio.tsx'
import { Section } from './section.tsx'
import { workedProportions } from './worked.ts'
import { WorkedNote } from './worked-note.tsx'

/** A table's rows restated for each lime state: dry loose sand and earth to one of lime, by volume. */
export function RowProportions({ rows }: { rows: readonly TableRow[] }) {
  const t = words('pages')
  const worked = rows.flatMap((row) => {
    const outcome = workedProportions(row.ingredients)
    return outcome.ok && LIME_STATES.some((state) => outcome.value.states[state]?.aggregateDry)
      ? [{ row, states: outcome.value.states }]
      : []
  })
  if (worked.length === 0) return null
  return (
    <Section id="worked" title={t('table.worked')} note={<WorkedNote of="table.workedNote" />}>
      <DataTable<'row' | LimeState>
        label={t('table.workedCaption')}
        caption={t('table.workedCaption')}
        stack
        columns={[
          { key: 'row', head: t('table.row'), names: true },
          ...LIME_STATES.map((state) => ({
            key: state,
            head: labelOf('measured-states', state),
            number: true,
          })),
        ]}
        rows={worked.map(({ row, states }) => ({
          key: row.id,
          cells: {
            row: (
              <a href={`#${row.id}`} {...inEnglish()}>
                {row.label}
              </a>
            ),
            ...(Object.fromEntries(
              LIME_STATES.map((state) => {
                const ratio = states[state]?.aggregateDry
                return [state, ratio ? <Ratio key={state} value={ratio} /> : t('table.notWorked')]
              }),
            ) as Record<LimeState, React.ReactNode>),
          },
        }))}
      />
    </Section>
  )
}
