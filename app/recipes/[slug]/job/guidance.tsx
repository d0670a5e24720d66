import type { RecipeBody } from '#lib/entry/recipe.ts'
import type { JobSheet, JobWarning } from '#lib/mortar/job-types.ts'
import { exactly } from '#lib/mortar/range.ts'
import type { SequenceStep } from '#lib/mortar/sequence.ts'
import { inSentence, labelList, materialLabel } from '../../../_ui/label.ts'
import { Quantity } from '../../../_ui/quantity.tsx'
import { SourceText } from '../../../_ui/source-mark.tsx'
import type { System } from '../../../_ui/systems.ts'
import { formatList } from '../../../_words/format.ts'
import { words } from '../../../_words/index.ts'
import { isOutsideUses } from './fields.ts'
import type { WorkRead } from './read-inputs.ts'
import { Shown, shownText } from './shown.tsx'

const t = words('job')

/** What to mind before mixing; first, when the recipe was not written for this work. */
export function Warnings({
  warnings,
  system,
  recipe,
  works,
}: {
  warnings: readonly JobWarning[]
  system: System
  recipe: RecipeBody
  works: readonly WorkRead[]
}) {
  const outside = works.filter(({ kind }) => isOutsideUses(recipe, kind))
  if (warnings.length === 0 && outside.length === 0) return null
  return (
    <div className="job-warnings">
      <h3>{t('sheet.warnings')}</h3>
      <ul>
        {outside.length > 0 && (
          <li>
            {t(outside.length === works.length ? 'warnings.outside-its-uses' : 'warnings.some-outside', {
              uses: inSentence(labelList('uses', recipe.uses)),
              works: formatList(outside.map(({ number }) => String(number))),
            })}
          </li>
        )}
        {warnings.map(({ id, material, value, unit }) => (
          <li key={`${id} ${material ?? ''}`}>
            {t(`warnings.${id}`, {
              material: material === undefined ? '' : materialLabel(material),
              value: value === undefined || unit === undefined ? '' : shownText(exactly(value), unit, system),
            })}
          </li>
        ))}
      </ul>
    </div>
  )
}

/** The order of work, from the eyewash (step 0) on. */
export const Sequence = ({ steps }: { steps: readonly SequenceStep[] }) => (
  <div className="job-sequence">
    <h3>{t('sheet.sequence')}</h3>
    <ol start={0}>
      {steps.map(({ id, hours, source }, place) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a step may come twice, and the list never changes
        <li key={`${place} ${id}`}>
          {t(`sequence.${id}`)} {hours && <Lasting hours={hours} />} {source && <SourceText text={source} />}
        </li>
      ))}
    </ol>
  </div>
)

const HOURS_A_DAY = 24

/** Long waits are told in days. */
export const Lasting = ({ hours }: { hours: NonNullable<SequenceStep['hours']> }) =>
  hours.typical < HOURS_A_DAY ? (
    <Shown value={hours} unit="h" system="metric" />
  ) : (
    <Quantity
      unit="d"
      value={{
        low: hours.low / HOURS_A_DAY,
        typical: hours.typical / HOURS_A_DAY,
        high: hours.high / HOURS_A_DAY,
      }}
    />
  )

/** How each material is kept on site. */
export const Storage = ({ storage }: { storage: JobSheet['storage'] }) => (
  <div className="job-keeping">
    <h3>{t('sheet.keeping')}</h3>
    <ul>
      {storage.map(({ material, id, days }) => (
        <li key={material}>
          {t('sheet.pair', { name: materialLabel(material), value: t(`keeping.${id}`) })}{' '}
          {days && <Quantity value={days} unit="d" />}
        </li>
      ))}
    </ul>
  </div>
)
