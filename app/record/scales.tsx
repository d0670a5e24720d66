import { DataTable } from '../_ui/data-table.tsx'
import { termName, termOf } from '../_ui/label.ts'
import { Said } from '../_ui/said.tsx'
import { ScaleDrawing } from '../_ui/scale-drawing.tsx'
import { SourceText } from '../_ui/source-mark.tsx'
import { SCALES } from '../_ui/states.tsx'
import { words } from '../_words/index.ts'

/** The three scales, best first, each state with the words that decide it. */
export function Scales() {
  const t = words('pages')
  return SCALES.map((scale) => (
    <DataTable
      key={scale.key}
      label={t(`states.${scale.key}`)}
      caption={t(`record.scale.${scale.key}`)}
      stack
      columns={[
        { key: 'state', head: t(`states.${scale.key}`), names: true },
        { key: 'definition', head: t('record.definition') },
        ...(sourced(scale) ? [{ key: 'source' as const, head: t('table.source') }] : []),
      ]}
      rows={scale.states.map((state) => {
        const term = termOf(scale.vocabulary, state)
        return {
          key: state,
          id: `${scale.key}-${state}`,
          cells: {
            state: (
              <>
                {term ? termName(term) : state}
                <ScaleDrawing vocabulary={scale.vocabulary} state={state} />
              </>
            ),
            definition: term && <Said of={term} field="definition" />,
            source: term?.source && <SourceText text={term.source} />,
          },
        }
      })}
    />
  ))
}

const sourced = (scale: (typeof SCALES)[number]) =>
  scale.states.some((state) => termOf(scale.vocabulary, state)?.source !== undefined)
