import type { Published } from '#lib/db/published.ts'
import type { RecipeBody } from '#lib/entry/recipe.ts'
import type { BatchPart } from '#lib/mortar/batch.ts'
import type { JobBatch, JobSheet } from '#lib/mortar/job-types.ts'
import { exactly, type Range } from '#lib/mortar/range.ts'
import { labelOf, materialLabel } from '../../../../_ui/label.ts'
import { Notice } from '../../../../_ui/notice.tsx'
import { formatDate } from '../../../../_words/format.ts'
import { words } from '../../../../_words/index.ts'
import { jobCautions } from '../cautions-line.tsx'
import type { System } from '../fields.ts'
import { loadsText } from '../loads-text.ts'
import type { Inputs } from '../read-inputs.ts'
import { exactText, Shown, shownText } from '../shown.tsx'
import type { Versions } from '../versions.ts'
import { CardSteps } from './card-steps.tsx'

const t = words('job')

interface Props {
  readonly recipe: Published<RecipeBody>
  readonly inputs: Inputs
  readonly sheet: JobSheet
  readonly versions: Versions
}

/** The card itself: cautions, then what goes into one load, then the steps, in type that is read at arm's length. */
export function BatchCard({ recipe, inputs, sheet, versions }: Props) {
  const { batch } = sheet
  const { body } = recipe
  if (batch === null)
    return (
      <Notice kind="note" title={t('card.noneTitle')}>
        <p>
          {inputs.site.box.read.amount && inputs.site.mixer.read.amount ? t('card.tooLarge') : t('card.none')}
        </p>
      </Notice>
    )
  return (
    <article className="batch-card" id="card" aria-labelledby="card-head">
      <h2 id="card-head">{body.title}</h2>
      {body.standing !== 'in-use' && (
        <p className="card-standing">
          <strong>{labelOf('standings', body.standing)}.</strong> {body.standingReason}{' '}
          {t('standing.printed', { reason: inputs.reason })}
        </p>
      )}
      <CardCautions sheet={sheet} recipe={body} />
      <OneLoad sheet={sheet} batch={batch} system={inputs.system} />
      <CardSteps steps={sheet.sequence} />
      <p className="card-foot">
        {body.invented && <strong>{t('card.invented')} </strong>}
        {t('card.versions', {
          ...versions,
          date: formatDate(recipe.publishedAt),
          sums: String(versions.sums),
          revision: String(versions.revision),
        })}
      </p>
    </article>
  )
}

/** What can hurt at the mixer in a sentence each, and what else the sheet warns of by its name. */
function CardCautions({ sheet, recipe }: { sheet: JobSheet; recipe: RecipeBody }) {
  const cautions = jobCautions(sheet, recipe)
  const here = cautions.filter(({ id }) => AT_THE_MIXER.has(id))
  const elsewhere = cautions.filter(({ id }) => !AT_THE_MIXER.has(id))
  return (
    <section className="card-cautions" aria-labelledby="card-cautions">
      <h3 id="card-cautions">{t('card.cautions')}</h3>
      <ul>
        {here.map(({ id, title, notice }) => (
          <li key={id}>
            <strong>{title}.</strong> {notice}
          </li>
        ))}
        {elsewhere.length > 0 && (
          <li>{t('card.elsewhere', { list: elsewhere.map(({ title }) => title).join('; ') })}</li>
        )}
      </ul>
    </section>
  )
}

const AT_THE_MIXER: ReadonlySet<string> = new Set([
  'quicklime',
  'hot-mortar',
  'lime-putty-and-dust',
  'silica-dust',
  'chromate-in-cement',
  'mixer',
])

/** What is measured for one load, in boxes or by weight, and its water between limits. */
function OneLoad({ sheet, batch, system }: { sheet: JobSheet; batch: JobBatch; system: System }) {
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
      <table>
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

function nameOf(sheet: JobSheet, { index, material }: BatchPart): string {
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
