import type { JobSheet, TakenFigure } from '#lib/mortar/job-types.ts'
import { convertRange, shownUnit } from '#lib/mortar/units.ts'
import { DataTable } from '../../../_ui/data-table.tsx'
import { materialLabel } from '../../../_ui/label.ts'
import { Quantity } from '../../../_ui/quantity.tsx'
import { BasisMark, SourceText } from '../../../_ui/source-mark.tsx'
import type { System } from '../../../_ui/systems.ts'
import { words } from '../../../_words/index.ts'
import { asPercent, DAMP } from './fields.ts'
import { fieldLabel, ofWork, propertyLabel } from './labels.ts'
import { ownName } from './own-figures.ts'
import { allFields, type Inputs } from './read-inputs.ts'

/** A figure of the list: what it is, what it is taken as, and the field that would replace it. */
interface Taken extends Omit<TakenFigure, 'field'> {
  readonly label: string
  /** None where no field can. */
  readonly replacedBy: string | undefined
}

/** Every default that the sheet turns on, with its basis and the way to put one's own figure in its place. */
export function TakenList({ sheet, inputs, printed }: { sheet: JobSheet; inputs: Inputs; printed: boolean }) {
  const t = words('job')
  const list = takenOf(sheet, inputs)
  if (list.length === 0) return null
  return (
    <div className={printed ? 'job-taken' : 'job-taken screen-only'} id="taken">
      <h3>{t('taken.title')}</h3>
      <p className="note">{t('taken.note')}</p>
      <DataTable<string>
        stack
        label={t('taken.title')}
        caption={t('taken.title')}
        hideCaption
        columns={[
          { key: 'figure', head: t('taken.figure'), names: true },
          { key: 'value', head: t('taken.value'), number: true },
          { key: 'from', head: t('taken.from') },
          { key: 'replace', head: t('taken.replace'), tight: true },
        ]}
        rows={list.map(({ label, value, unit, basis, source, replacedBy }) => ({
          key: label,
          cells: {
            figure: label,
            value: (
              <Quantity value={inSystem(value, unit, inputs.system)} unit={shownUnit(unit, inputs.system)} />
            ),
            from:
              source === undefined ? <BasisMark basis={basis} /> : <SourceText text={source} basis={basis} />,
            replace: replacedBy !== undefined && (
              <a
                className="screen-only touch"
                href={`#field-${replacedBy}`}
                aria-label={`${t('taken.yours')}: ${label}`}
              >
                {t('taken.yours')}
              </a>
            ),
          },
        }))}
      />
    </div>
  )
}

/** All that was taken where nobody entered a figure. */
export const takenOf = (sheet: JobSheet, inputs: Inputs): Taken[] => [
  ...ofTheForm(sheet, inputs),
  ...ofTheSums(sheet, inputs),
]

const inSystem = (value: Taken['value'], unit: string, system: System) =>
  convertRange(value, unit, shownUnit(unit, system))

/** What the form takes where a field was left blank. */
function ofTheForm(sheet: JobSheet, inputs: Inputs): Taken[] {
  const t = words('job')
  const several = inputs.works.length > 1
  const ofWorks = inputs.works.flatMap(({ number, dimensions, loss }) =>
    [...dimensions, loss].map((field) => ({ field, label: ofWork(number, several, fieldLabel(field)) })),
  )
  const { water, heap } = inputs.site
  const heated = sheet.heat ? [water, heap].map((field) => ({ field, label: fieldLabel(field) })) : []
  const fields = [...ofWorks, ...heated].flatMap(({ field: { usual, unit, read, name }, label }): Taken[] =>
    usual && !read.amount ? [{ ...usual, value: usual, unit, label, replacedBy: name }] : [],
  )
  const damp = inputs.sand === 'damp' && sheet.ingredients.some(({ state }) => state === 'damp')
  if (!damp) return fields
  return [
    ...fields,
    { value: DAMP, unit: '%', basis: 'practice', label: t('taken.damp'), replacedBy: 'sand' },
  ]
}

/** What the sums take of the materials and by themselves, save what was typed. */
function ofTheSums(sheet: JobSheet, inputs: Inputs): Taken[] {
  const fields = new Map(allFields(inputs).map((field) => [field.name, field]))
  return sheet.taken.flatMap(({ field, ...figure }) => {
    const name = ownName(field)
    const own = fields.get(name)
    if (own?.read.amount) return []
    const share = figure.unit === '1' || figure.unit === 'kg/kg'
    return [
      {
        ...figure,
        ...(share && { value: asPercent(figure.value), unit: '%' }),
        label: labelOf(field),
        replacedBy: own && name,
      },
    ]
  })
}

function labelOf(field: string): string {
  const t = words('job')
  const [group, material = '', property = ''] = field.split('.')
  if (group === 'materials')
    return t('sheet.pair', { name: materialLabel(material), value: propertyLabel(property) })
  return field === 'assumed.dampness' ? t('taken.dampness') : fieldLabel({ path: field, name: '' })
}
