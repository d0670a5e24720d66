import type { KeptBlock } from '#lib/entry/kept-sheet.ts'
import { exactly, type Range, scale } from '#lib/mortar/range.ts'
import { cautionWords } from '../../_ui/caution-words.ts'
import { inSentence, labelList, materialLabel } from '../../_ui/label.ts'
import { quantityText } from '../../_ui/quantity.tsx'
import { formatList } from '../../_words/format.ts'
import { words } from '../../_words/index.ts'
import { jobCautions } from '../../recipes/[slug]/job/cautions-line.tsx'
import { isOutsideUses } from '../../recipes/[slug]/job/fields.ts'
import { shownText } from '../../recipes/[slug]/job/shown.tsx'
import type { Job } from './job.ts'

type KeptList = Extract<KeptBlock, { kind: 'list' }>

const t = words('job')

/** What is told one under the other beside the figures; a list without items is left out. */
export const listsOf = (job: Job): KeptList[] =>
  [warningsOf(job), sequenceOf(job), keepingOf(job), cautionsOf(job)].filter(({ items }) => items.length > 0)

function warningsOf({ sheet, recipe, inputs }: Job): KeptList {
  const { works } = inputs
  const strange = works.filter(({ kind }) => isOutsideUses(recipe, kind))
  const outside =
    strange.length === 0
      ? []
      : [
          {
            name: 'outside-its-uses',
            text: t(strange.length === works.length ? 'warnings.outside-its-uses' : 'warnings.some-outside', {
              uses: inSentence(labelList('uses', recipe.uses)),
              works: formatList(strange.map(({ number }) => String(number))),
            }),
          },
        ]
  const warned = sheet.warnings.map(({ id, material, value, unit }) => ({
    name: material === undefined ? id : `${id}-${material}`,
    text: t(`warnings.${id}`, {
      material: material === undefined ? '' : materialLabel(material),
      value: value === undefined || unit === undefined ? '' : shownText(exactly(value), unit, inputs.system),
    }),
  }))
  return { kind: 'list', name: 'warnings', title: t('sheet.warnings'), items: [...outside, ...warned] }
}

/** The order of work; a step may come twice, so its place is part of its name. */
const sequenceOf = ({ sheet: { sequence } }: Job): KeptList => ({
  kind: 'list',
  name: 'sequence',
  title: t('sheet.sequence'),
  ordered: true,
  items: sequence.map(({ id, hours, source }, place) => ({
    name: `${place}-${id}`,
    text: hours === undefined ? t(`sequence.${id}`) : `${t(`sequence.${id}`)} ${lasting(hours)}`,
    ...(source !== undefined && { source }),
  })),
})

const HOURS_A_DAY = 24

/** Long waits are told in days. */
const lasting = (hours: Range): string =>
  hours.typical < HOURS_A_DAY ? said(hours, 'h') : said(scale(hours, 1 / HOURS_A_DAY), 'd')

const keepingOf = ({ sheet: { storage } }: Job): KeptList => ({
  kind: 'list',
  name: 'keeping',
  title: t('sheet.keeping'),
  items: storage.map(({ material, id, days }) => {
    const how = t('sheet.pair', { name: materialLabel(material), value: t(`keeping.${id}`) })
    return { name: material, text: days ? `${how} ${said(days, 'd')}` : how }
  }),
})

const cautionsOf = ({ sheet, recipe }: Job): KeptList => ({
  kind: 'list',
  name: 'cautions',
  title: t('sheet.cautions'),
  items: jobCautions(sheet, recipe).map((caution) => {
    const { title, notice } = cautionWords(caution)
    return { name: caution.id, text: `${title}. ${notice}` }
  }),
})

function said(value: Range, unit: string): string {
  const { main, range } = quantityText(value, unit)
  return range === null ? main : `${main} ${range}`
}
