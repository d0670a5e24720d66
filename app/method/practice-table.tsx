import { content } from '#lib/content/index.ts'
import { comparePractice } from '#lib/mortar/practice.ts'
import { DataTable } from '../_ui/data-table.tsx'
import { materialLabel } from '../_ui/label.ts'
import { Quantity } from '../_ui/quantity.tsx'
import { Section } from '../_ui/section.tsx'
import { BasisMark, SourceText } from '../_ui/source-mark.tsx'
import { words } from '../_words/index.ts'

/** The lime and the sand that the sayings are tried on: pure, and of usual densities. */
const LIME = 'lime-cl90'
const SAND = 'sand-sharp'

/** Some hundred thousand draws that content alone decides: they are worked once. */
let compared: ReturnType<typeof comparePractice> | undefined

function compare() {
  const { materials } = content()
  const [lime, sand] = [materials.get(LIME), materials.get(SAND)]
  return lime && sand && comparePractice(lime.properties, sand.properties)
}

/** What masons and books say in round numbers beside what the sums make of it, disagreements included. */
export function PracticeTable() {
  const t = words('pages')
  const steps = words('steps')
  compared ??= compare()
  if (compared?.ok !== true) return null
  return (
    <Section id="practice" title={t('method.practice')} note={t('method.practiceNote')}>
      <DataTable
        label={t('method.practice')}
        caption={t('method.practiceCaption', { lime: materialLabel(LIME), sand: materialLabel(SAND) })}
        stack
        columns={[
          { key: 'saying', head: t('method.saying'), names: true },
          { key: 'said', head: t('method.said'), tight: true },
          { key: 'ours', head: t('method.ours'), tight: true },
          { key: 'judged', head: t('method.judged') },
        ]}
        rows={compared.value.map((one) => ({
          key: one.id,
          cells: {
            saying: (
              <>
                {steps(`practice.${one.id}`)}
                <span className="note block">
                  {one.source === undefined ? (
                    <BasisMark basis={one.basis} />
                  ) : (
                    <SourceText text={one.source} basis={one.basis} />
                  )}
                </span>
              </>
            ),
            said: t('method.between', one.said),
            ours: <Quantity value={one.ours} unit="1" />,
            judged: one.reason === null ? t('method.inside') : steps(`practiceReason.${one.reason}`),
          },
        }))}
      />
    </Section>
  )
}
