import type { JobSheet } from '#lib/mortar/job-types.ts'
import { exactly, type Range, scale } from '#lib/mortar/range.ts'
import { Facts } from '../../../_ui/facts.tsx'
import { Quantity } from '../../../_ui/quantity.tsx'
import type { System } from '../../../_ui/systems.ts'
import { words } from '../../../_words/index.ts'
import { loadsText } from './loads-text.ts'
import { Money } from './money.tsx'
import { Shown, shownText } from './shown.tsx'

/** The job in a few figures: mortar, loads, water, heat, cost. */
export function Totals({ sheet, system, money }: { sheet: JobSheet; system: System; money: string }) {
  const t = words('job')
  const { water, heat, batch, cost } = sheet
  const priced = sheet.ingredients.some((one) => one.cost !== null) ? cost : null
  const waterL = (value: Range) => <Shown value={value} unit="L" system={system} liquid />
  return (
    <>
      <Facts
        facts={{
          [t('sheet.made')]: <Shown value={sheet.mortarL} unit="L" system={system} large />,
          [t('sheet.inPlace')]: <Shown value={sheet.netL} unit="L" system={system} />,
          [t('sheet.bricks')]: sheet.unitCount && <Quantity value={sheet.unitCount} unit="1" />,
          [t('sheet.loads')]: batch && loadsText(batch.loads),
          [t('sheet.loadMakes')]: batch && shownText(exactly(batch.mortarL), 'L', system),
          [t('sheet.waterFirst')]: waterL(water.firstChargeL),
          [t('sheet.waterLoad')]:
            batch &&
            shownText(scale(exactly(water.firstChargeL.typical), 1 / batch.loads), 'L', system, true),
          [t('sheet.waterTotal')]: waterL(water.likelyTotalL),
          [t('sheet.waterSand')]: water.fromSandL.high > 0 ? waterL(water.fromSandL) : null,
          [t('sheet.heat')]: heat && <Shown value={heat.averageC} unit="C" system={system} />,
          [t('sheet.boiled')]: water.boiledL.high > 0 ? waterL(water.boiledL) : null,
          [t('sheet.costMaterials')]: priced && <Money value={priced.materials} currency={money} />,
          [t('sheet.costLabour')]: cost?.labour && <Money value={cost.labour} currency={money} />,
          [t('sheet.costTotal')]: priced?.labour && <Money value={priced.total} currency={money} />,
        }}
      />
      <p className="note">
        {t('sheet.waterNote')} {heat && t('sheet.heatNote')}
      </p>
    </>
  )
}
