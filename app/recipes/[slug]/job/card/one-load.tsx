import type { BatchPart } from '#lib/mortar/batch.ts'
import type { JobBatch, JobSheet } from '#lib/mortar/job-types.ts'
import { exactly, type Range } from '#lib/mortar/range.ts'
import { labelOf, materialLabel } from '../../../../_ui/label.ts'
import type { System } from '../../../../_ui/systems.ts'
import { words } from '../../../../_words/index.ts'
import { loadsText } from '../loads-text.ts'
import { exactText, Shown, shownText } from '../shown.tsx'

const t = words('job')

/** What is measured for one load, in boxes or by weight, and its water between limits. */
export function OneLoad({ sheet, batch, system }: { sheet: JobSheet; batch: JobBatch; system: System }) {
  const water = (name: string, value: Range) => (
    <tr>
      <th scope="row">{name}</th>
      <td>
        <Shown value={value} unit="L" system={system} liquid />
      </td>
    </tr>
  )
  return (
    <section className="card-load" aria-labelledby="card-load">
      <h3 id="card-load">{t('card.load', { loads: loadsText(batch.loads) })}</h3>
      <table aria-labelledby="card-load">
        <tbody>
          {batch.parts.map((part) => (
            <tr key={part.index}>
              <th scope="row">{nameOf(sheet, part)}</th>
              <td>
                <Measured part={part} system={system} />
              </td>
            </tr>
          ))}
          {water(t('card.waterFirst'), batch.firstChargeL)}
          {water(t('card.waterTotal'), batch.likelyTotalL)}
        </tbody>
      </table>
      <p>
        {t('card.box', { box: exactText(batch.gaugeBoxL, 'L', system) })} {t('card.makes')}{' '}
        <Shown value={batch.makesL} unit="L" system={system} />. {t('card.water')}
      </p>
    </section>
  )
}

/** What is measured, and the state that it is measured in. */
export function nameOf(sheet: JobSheet, { index, material }: BatchPart): string {
  const state = sheet.ingredients.find((one) => one.index === index)?.state
  return state === undefined
    ? materialLabel(material)
    : t('sheet.state', { material: materialLabel(material), state: labelOf('measured-states', state) })
}

function Measured({ part: { boxes, litres, kg }, system }: { part: BatchPart; system: System }) {
  if (boxes === null || litres === null) return <>{shownText(exactly(kg), 'kg', system)}</>
  return (
    <>
      {t('sheet.boxes', { count: boxes })}{' '}
      <span className="quantity-range">{t('card.litres', { volume: exactText(litres, 'L', system) })}</span>
    </>
  )
}
