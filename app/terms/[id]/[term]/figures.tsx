import { TERM_FIGURES } from '#lib/content/schemas.ts'
import { termLine } from '#lib/content/term-tree.ts'
import type { Term, TermFigure } from '#lib/content/types.ts'
import { DataTable } from '../../../_ui/data-table.tsx'
import { labelOf, termOf } from '../../../_ui/label.ts'
import { Quantity, withUnit } from '../../../_ui/quantity.tsx'
import { Said } from '../../../_ui/said.tsx'
import { Section } from '../../../_ui/section.tsx'
import { BasisMark, SourceText } from '../../../_ui/source-mark.tsx'
import { formatNumber } from '../../../_words/format.ts'
import { words } from '../../../_words/index.ts'

const t = words('find')

/** What is told of a kind of stone in figures; of a kind that has none, those of the nearest that covers it. */
export function TermFigures({ term }: { term: Term }) {
  const holder = termLine('units', term.id).find((id) => termOf('units', id)?.figures !== undefined)
  const figures = holder === undefined ? [] : (termOf('units', holder)?.figures ?? [])
  return (
    <Section id="figures" title={t('term.figures')} note={t('term.figuresNote')}>
      {holder !== undefined && holder !== term.id && (
        <p>{t('term.figuresOf', { term: labelOf('units', holder) })}</p>
      )}
      {figures.length === 0 ? (
        <p>{t('term.noFigures')}</p>
      ) : (
        <DataTable
          label={t('term.figures')}
          caption={t('term.figures')}
          hideCaption
          stack
          columns={[
            { key: 'property', head: t('term.property'), names: true },
            { key: 'value', head: t('term.value') },
            { key: 'source', head: t('term.source') },
          ]}
          rows={figures.map((figure) => ({
            key: `${figure.what} ${figure.basis}`,
            cells: {
              property: t(`term.figure.${figure.what}`),
              value: <FigureValue figure={figure} />,
              source: <FigureSource figure={figure} />,
            },
          }))}
        />
      )}
    </Section>
  )
}

/** As the source gives it: one figure, or the lowest and the highest, with the average where there is one. */
function FigureValue({ figure: { what, low, high, average } }: { figure: TermFigure }) {
  const unit = TERM_FIGURES[what]
  if (low === high) return <Quantity value={low} unit={unit} />
  const span = words('common')('parts.span', { low: formatNumber(low), high: formatNumber(high) })
  return (
    <>
      {withUnit(span, unit)}
      {average !== undefined && (
        <span className="note block">
          {t('term.average', { value: withUnit(formatNumber(average), unit) })}
        </span>
      )}
    </>
  )
}

const FigureSource = ({ figure }: { figure: TermFigure }) => (
  <>
    {figure.source === undefined ? (
      <BasisMark basis={figure.basis} />
    ) : (
      <SourceText text={figure.source} basis={figure.basis} />
    )}
    {figure.note !== undefined && (
      <span className="note block">
        <Said of={figure} field="note" />
      </span>
    )}
  </>
)
