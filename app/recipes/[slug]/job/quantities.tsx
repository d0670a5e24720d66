import type { BatchPart } from '#lib/mortar/batch.ts'
import type { JobIngredient, JobSheet } from '#lib/mortar/job-types.ts'
import { exactly } from '#lib/mortar/range.ts'
import { DataTable } from '../../../_ui/data-table.tsx'
import { labelOf, materialLabel } from '../../../_ui/label.ts'
import type { System } from '../../../_ui/systems.ts'
import { formatNumber } from '../../../_words/format.ts'
import { words } from '../../../_words/index.ts'
import { Money } from './money.tsx'
import { exactText, Shown, shownText } from './shown.tsx'

const t = words('job')

/** Every ingredient: as measured on site, by mass, in one load, and as bought. */
export function Quantities({ sheet, system, money }: { sheet: JobSheet; system: System; money: string }) {
  // Where nothing is gauged before it is slaked, that is told among what to mind.
  const asksForBox = !sheet.warnings.some(({ id }) => id === 'gauge-once-slaked')
  const priced = sheet.ingredients.some(({ cost }) => cost !== null)
  return (
    <>
      <DataTable<string>
        stack
        label={t('sheet.quantities')}
        caption={t('sheet.quantities')}
        columns={[
          { key: 'ingredient', head: t('sheet.ingredient'), names: true },
          { key: 'volume', head: t('sheet.volume'), number: true },
          { key: 'mass', head: t('sheet.mass'), number: true },
          ...(sheet.batch ? [{ key: 'load', head: t('sheet.load'), number: true }] : []),
          { key: 'order', head: t('sheet.order') },
          ...(priced ? [{ key: 'cost', head: t('sheet.cost'), number: true }] : []),
        ]}
        rows={sheet.ingredients.map((one) => ({
          key: `${one.index}`,
          cells: {
            ingredient: t('sheet.state', {
              material: materialLabel(one.material),
              state: labelOf('measured-states', one.state),
            }),
            volume: one.siteL && (
              <Shown value={one.siteL} unit="L" system={system} liquid={one.role === 'water'} />
            ),
            mass: one.siteKg && <Shown value={one.siteKg} unit="kg" system={system} />,
            load: loadOf(
              sheet.batch?.parts.find(({ index }) => index === one.index),
              system,
            ),
            order: <Order ingredient={one} system={system} />,
            cost: one.cost && <Money value={one.cost} currency={money} />,
          },
        }))}
      />
      <p className={sheet.batch ? 'note' : 'note screen-only'}>
        {sheet.batch
          ? t('sheet.box', { box: exactText(sheet.batch.gaugeBoxL, 'L', system) })
          : asksForBox && t('sheet.noBatch')}
      </p>
    </>
  )
}

function loadOf(part: BatchPart | undefined, system: System) {
  if (!part) return null
  return part.boxes === null
    ? shownText(exactly(part.kg), 'kg', system)
    : t('sheet.boxes', { count: part.boxes })
}

function Order({ ingredient: { order, siteKg }, system }: { ingredient: JobIngredient; system: System }) {
  if (order === null) return siteKg && t('sheet.loose')
  const { packs, packKg, leftKg } = order
  return (
    <>
      {t('sheet.packs', { count: packs.typical, pack: exactText(packKg, 'kg', system) })}
      {packs.low < packs.high && (
        <span className="quantity-range">
          {' '}
          {t('sheet.packsRange', { low: formatNumber(packs.low), high: formatNumber(packs.high) })}
        </span>
      )}
      <br />
      <span className="note">{t('sheet.left', { kg: shownText(exactly(leftKg), 'kg', system) })}</span>
    </>
  )
}
