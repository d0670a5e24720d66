import { askedLanguage } from '#app/asked.ts'
import type { Caution } from '#lib/content/types.ts'
import type { Published } from '#lib/db/published.ts'
import type { RecipeBody } from '#lib/entry/recipe.ts'
import type { JobSheet } from '#lib/mortar/job-types.ts'
import { asWritten } from '../../../../_ui/as-written.ts'
import { cautionWords } from '../../../../_ui/caution-words.ts'
import { labelOf } from '../../../../_ui/label.ts'
import { Notice } from '../../../../_ui/notice.tsx'
import { Written } from '../../../../_ui/written.tsx'
import { formatDate } from '../../../../_words/format.ts'
import { words } from '../../../../_words/index.ts'
import { jobCautions } from '../cautions-line.tsx'
import { loadsText } from '../loads-text.ts'
import type { Inputs } from '../read-inputs.ts'
import type { Versions } from '../versions.ts'
import { cardFit } from './card-fit.ts'
import { CardSteps, stepsAtMixer } from './card-steps.tsx'
import { nameOf, OneLoad } from './one-load.tsx'

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
  if (batch === null) {
    const isSaid = inputs.site.box.read.amount && inputs.site.mixer.read.amount
    const slakedApart = sheet.warnings.some(({ id }) => id === 'gauge-once-slaked')
    return (
      <Notice kind="note" title={t('card.noneTitle')}>
        <p>{t(slakedApart ? 'card.slakedApart' : isSaid ? 'card.tooLarge' : 'card.none')}</p>
      </Notice>
    )
  }
  const printed = body.standing === 'in-use' ? undefined : t('standing.printed', { reason: inputs.reason })
  const cautions = cautionsOnCard(jobCautions(sheet, body))
  const steps = stepsAtMixer(sheet.sequence)
  const versionsLine = t('card.versions', {
    edition: versions.edition,
    digest: versions.digest,
    date: formatDate(recipe.publishedAt),
    sums: String(versions.sums),
    revision: String(versions.revision),
  })
  // The page's own note on its language is not printed: a card is one sheet.
  const foot = askedLanguage() === 'en' ? versionsLine : `${versionsLine} ${t('card.translated')}`
  const fit = cardFit({
    title: body.title,
    standing: printed === undefined ? '' : `${body.standingReason} ${printed}`,
    cautions: cautions.map(({ title = '', text }) => `${title} ${text}`),
    loads: t('card.load', { loads: loadsText(batch.loads) }),
    rows: [...batch.parts.map((part) => nameOf(sheet, part)), t('card.waterFirst'), t('card.waterTotal')],
    below: `${t('card.box', { box: '000 L' })} ${t('card.makes')} 000 L (000–000). ${t('card.water')}`,
    steps: steps.map(({ id, hours }) => `${t(`sequence.${id}`)}${hours ? ' 00 h (00–00)' : ''}`),
    foot: `${body.invented ? t('card.invented') : ''} ${foot}`,
  })
  return (
    <article className={`batch-card card-fit-${fit}`} id="card" aria-labelledby="card-head">
      <h2 id="card-head" {...asWritten()}>
        {body.title}
      </h2>
      {printed !== undefined && (
        <p className="card-standing">
          <strong>{labelOf('standings', body.standing)}.</strong> <Written>{body.standingReason}</Written>{' '}
          {printed}
        </p>
      )}
      <CardCautions cautions={cautions} />
      <OneLoad sheet={sheet} batch={batch} system={inputs.system} />
      <CardSteps steps={steps} />
      <p className="card-foot">
        {body.invented && <strong>{t('card.invented')} </strong>}
        {foot}
      </p>
    </article>
  )
}

interface CardCaution {
  readonly title?: string
  readonly text: string
}

/** What can hurt at the mixer in a sentence each, and what else the sheet warns of by its name. */
function cautionsOnCard(cautions: readonly Caution[]): CardCaution[] {
  const elsewhere = cautions.filter(({ id }) => !AT_THE_MIXER.has(id)).map((one) => cautionWords(one).title)
  return [
    ...cautions
      .filter(({ id }) => AT_THE_MIXER.has(id))
      .map(cautionWords)
      .map(({ title, notice }) => ({ title, text: notice })),
    ...(elsewhere.length > 0 ? [{ text: t('card.elsewhere', { list: elsewhere.join('; ') }) }] : []),
  ]
}

const CardCautions = ({ cautions }: { cautions: readonly CardCaution[] }) => (
  <section className="card-cautions" aria-labelledby="card-cautions">
    <h3 id="card-cautions">{t('card.cautions')}</h3>
    <ul>
      {cautions.map(({ title, text }) => (
        <li key={text}>
          {title !== undefined && <strong>{title}.</strong>} {text}
        </li>
      ))}
    </ul>
  </section>
)

const AT_THE_MIXER: ReadonlySet<string> = new Set([
  'quicklime',
  'hot-mortar',
  'lime-putty-and-dust',
  'silica-dust',
  'chromate-in-cement',
  'mixer',
])
