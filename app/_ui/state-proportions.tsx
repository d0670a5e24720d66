import { LIME_STATES } from '#lib/entry/terms.ts'
import type { IngredientInput } from '#lib/mortar/ingredient.ts'
import type { Proportions, StateProportions } from '#lib/mortar/proportions.ts'
import { formatList } from '../_words/format.ts'
import { words } from '../_words/index.ts'
import { DataTable } from './data-table.tsx'
import { Facts } from './facts.tsx'
import { labelOf, materialLabel } from './label.ts'
import { Quantity } from './quantity.tsx'
import { RangeBar } from './range-bar.tsx'
import { Ratio } from './ratio.tsx'

/** A recipe restated for each lime state that its limes' known properties reach, with ranges. */
export function StateProportionsTable(props: {
  proportions: Proportions
  ingredients: readonly IngredientInput[]
}) {
  const t = words('pages')
  const { proportions: worked, ingredients } = props
  const states = LIME_STATES.flatMap((state) => worked.states[state] ?? [])
  const max = Math.max(...states.map((state) => state.aggregateDry?.high ?? 0))
  const others = states[0]?.parts.filter(({ index }) => ingredients[index]?.role !== 'water') ?? []
  return (
    <>
      {states.length > 0 && max > 0 && (
        <DataTable
          label={t('worked.caption')}
          caption={t('worked.caption')}
          stack
          columns={[
            { key: 'state', head: t('worked.state'), names: true },
            { key: 'dry', head: t('worked.dry') },
            { key: 'damp', head: t('worked.damp') },
            { key: 'lime', head: t('worked.lime') },
          ]}
          rows={states.map((state) => ({ key: state.state, cells: cellsOf(state, max) }))}
        />
      )}
      {others.length > 1 && (
        <DataTable<string>
          label={t('worked.each')}
          caption={t('worked.each')}
          stack
          columns={[
            { key: 'material', head: t('worked.material'), names: true },
            ...states.map(({ state }) => ({
              key: state,
              head: labelOf('measured-states', state),
              number: true,
            })),
          ]}
          rows={others.map((other, place) => ({
            key: `${other.index}`,
            cells: {
              material: materialLabel(other.material),
              ...Object.fromEntries(
                states.map((state) => {
                  const part = state.parts.filter(({ index }) => ingredients[index]?.role !== 'water')[place]
                  return [state.state, part ? <Ratio key={state.state} value={part.dry} /> : null]
                }),
              ),
            },
          }))}
        />
      )}
      <Facts
        facts={{
          [t('worked.binder')]: worked.binderPercent && <Quantity value={worked.binderPercent} unit="%" />,
          [t('worked.clay')]:
            worked.clayPercent && worked.clayPercent.high > 0 ? (
              <Quantity value={worked.clayPercent} unit="%" />
            ) : null,
          [t('worked.fibre')]: worked.fibreKgM3 && <Quantity value={worked.fibreKgM3} unit="kg/m3" />,
        }}
      />
      {worked.unknowns.length > 0 && (
        <p className="note">
          {t('worked.unknown', {
            materials: formatList([
              ...new Set(worked.unknowns.map(({ material }) => materialLabel(material))),
            ]),
          })}
        </p>
      )}
    </>
  )
}

const cellsOf = (state: StateProportions, max: number) => ({
  state: labelOf('measured-states', state.state),
  dry: state.aggregateDry && (
    <>
      <Ratio value={state.aggregateDry} />
      <RangeBar value={state.aggregateDry} max={max} />
    </>
  ),
  damp: state.aggregateDamp && <Ratio value={state.aggregateDamp} />,
  lime: state.limePercent && <Quantity value={state.limePercent} unit="%" />,
})
