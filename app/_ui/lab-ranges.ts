import { content } from '#lib/content/index.ts'
import { termLine } from '#lib/content/term-tree.ts'
import type { LabProperty } from '#lib/entry/laboratory.ts'
import { COMPATIBILITY_RULES, MORTAR_CLASSES } from '#lib/mortar/index.ts'
import type { Basis } from '#lib/mortar/range.ts'
import { words } from '../_words/index.ts'
import { inSentence, labelOf, materialLabel, termOf } from './label.ts'

/** What a laboratory result can be set beside: either end may be open. */
export interface LabRange {
  readonly key: string
  readonly label: string
  readonly href?: string
  readonly low?: number
  readonly typical?: number
  readonly high?: number
  /** `source-id` or `source-id, locator`. */
  readonly source?: string
  readonly basis: Basis
  readonly note?: string
}

const t = words('evidence')

/**
 * All that the site holds to set beside results for a property: mortars made with its materials, classes of
 * standards, limits for salts, and the units that a mortar is for.
 */
export const labRanges = (property: LabProperty, units: readonly string[]): LabRange[] => [
  ...ofMaterials(property),
  ...ofClasses(property),
  ...ofSalts(property),
  ...[...new Set(units)].flatMap((unit) => ofUnit(property, unit)),
]

const IN_MATERIALS = ['compressiveStrength', 'flexuralStrength', 'openPorosity', 'capillarity'] as const

function ofMaterials(property: LabProperty): LabRange[] {
  const name = IN_MATERIALS.find((one) => one === property)
  if (name === undefined) return []
  return [...content().materials.values()].flatMap(({ id, properties }) => {
    const range = properties[name]
    if (range === undefined) return []
    return [
      {
        ...range,
        key: id,
        label: t('laboratory.mortarsWith', { name: inSentence(materialLabel(id)) }),
        href: `/materials/${id}`,
      },
    ]
  })
}

const ofClasses = (property: LabProperty): LabRange[] =>
  MORTAR_CLASSES.filter((one) => one.property === property).map(({ id, property: _, ...rest }) => ({
    ...rest,
    key: id,
    label: t('laboratory.renderClass', { name: id }),
  }))

/** From the lower limit on the wall should be looked into; from the upper one its load is high. */
const ofSalts = (property: LabProperty): LabRange[] =>
  COMPATIBILITY_RULES.flatMap((rule) => {
    if (rule.kind !== 'salt' || rule.ion !== property) return []
    const { basis, source, watch, high } = rule
    return [
      {
        key: rule.id,
        label: t('laboratory.saltLimits'),
        low: watch,
        high,
        basis,
        ...(source !== undefined && { source }),
        note: t('laboratory.saltNote'),
      },
    ]
  })

const OF_UNITS = {
  compressiveStrength: 'compressive-strength',
  bulkDensity: 'bulk-density',
  openPorosity: 'open-porosity',
} as const

/** The figures of a stone or other unit; where it has none, those of the nearest kind that it belongs to. */
function ofUnit(property: LabProperty, unit: string): LabRange[] {
  const what = OF_UNITS[property as keyof typeof OF_UNITS]
  for (const id of termLine('units', unit)) {
    const term = termOf('units', id)
    const figures = term?.figures?.filter((one) => one.what === what) ?? []
    if (figures.length > 0)
      return figures.map(({ what: _, average, ...figure }, k) => ({
        ...figure,
        ...(average !== undefined && { typical: average }),
        key: `${id} ${k}`,
        label: labelOf('units', id),
        href: `/terms/units/${id}`,
      }))
  }
  return []
}
