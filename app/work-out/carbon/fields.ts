import type { Range } from '#lib/mortar/range.ts'
import type { Typed } from '../../_http/form.ts'
import { type AmountAsked, chosenIn, type FieldAsked, type Usual, usualOf } from '../../_ui/workshop/asked.ts'
import type { BenchData } from '../../_ui/workshop/brought.ts'
import { materialOptions } from '../../_ui/workshop/options.ts'
import { words } from '../../_words/index.ts'
import { perWeighed } from './per-weighed.ts'

/** What a lime is weighed as. */
export const WEIGHED = ['quicklime', 'dry-hydrate'] as const
/** What may be in the mortar beside lime and sand. */
export const OTHER_ROLES = ['pozzolan', 'cement', 'gypsum', 'earth'] as const

/** From memory: lorries between full and long, and half empty and small. */
const HAULAGE: Usual = { low: 0.05, typical: 0.1, high: 0.2, basis: 'memory' }
/** What a review of published measurements found of pure air-lime mortars; the middle is taken as typical. */
const UPTAKE: Usual = {
  low: 0.8,
  typical: 0.86,
  high: 0.92,
  basis: 'read',
  source: 'grosso-campo-2022, abstract',
}

/** What is in the mortar, where it comes from, how far it was carried, and how air gets at it. */
export function fieldsOf(typed: Typed, data: BenchData): FieldAsked[] {
  const t = words('workOut')
  const ids = Object.keys(data.materials)
  const lime = data.materials[chosenIn(typed, 'lime', ids, 'lime-cl90')]
  const weighed = chosenIn(typed, 'weighed', WEIGHED, 'quicklime')
  const other = chosenIn(typed, 'other', ids, '')
  const share = (name: 'freeCaO' | 'freeMgO') => perWeighed(lime?.properties ?? {}, name, weighed)
  return [
    { ...figure('mortar', 'L', 'mix'), path: 'mortarL', example: 1000 },
    {
      kind: 'choice',
      name: 'lime',
      label: t('carbon.fields.lime'),
      group: t('carbon.groups.lime'),
      options: materialOptions(data, ['lime']),
      first: 'lime-cl90',
    },
    {
      kind: 'choice',
      name: 'weighed',
      label: t('carbon.fields.weighed'),
      group: t('carbon.groups.lime'),
      options: WEIGHED.map((value) => ({ value, label: t(`carbon.weighed.${value}`) })),
      first: 'quicklime',
    },
    { ...figure('lime-kg', 'kg', 'lime'), path: 'limes.0.massKg', example: 200 },
    { ...figure('cao', '1', 'lime'), ...percent, path: 'limes.0.caoShare', usual: share('freeCaO') },
    { ...figure('mgo', '1', 'lime'), ...percent, path: 'limes.0.mgoShare', usual: share('freeMgO') },
    { ...figure('fuel', 'kg/kg', 'lime'), path: 'limes.0.fuelKgPerKg', optional: true },
    { ...figure('dust', '1', 'lime'), ...percent, path: 'limes.0.kilnDustShare', optional: true },
    { ...figure('lime-km', 'km', 'lime'), path: 'limes.0.distanceKm', optional: true, example: 150 },
    {
      kind: 'choice',
      name: 'sand',
      label: t('carbon.fields.sand'),
      group: t('carbon.groups.others'),
      options: materialOptions(data, ['aggregate']),
      first: 'sand-sharp',
    },
    ...material('sand', 0, data.materials[chosenIn(typed, 'sand', ids, 'sand-sharp')]),
    {
      kind: 'choice',
      name: 'other',
      label: t('carbon.fields.other'),
      group: t('carbon.groups.others'),
      options: [{ value: '', label: t('carbon.none') }, ...materialOptions(data, OTHER_ROLES)],
      first: '',
      leads: true,
    },
    ...(other === '' ? [] : material('other', 1, data.materials[other])),
    { ...figure('haulage', 'kg/(t.km)', 'road'), path: 'transportKgPerTkm', bench: true, usual: HAULAGE },
    { ...figure('uptake', '1', 'uptake'), ...percent, path: 'uptakeShare', usual: UPTAKE },
    { ...figure('k', 'mm/d^0.5', 'uptake'), path: 'kMmPerRootDay', optional: true },
    { ...figure('thickness', 'mm', 'uptake'), path: 'depthMm', optional: true },
    {
      kind: 'list',
      name: 'years',
      label: t('carbon.fields.years'),
      group: t('carbon.groups.uptake'),
      unit: 'year',
      example: [1, 10, 50, 100],
      most: 12,
      limits: { min: 0, max: 2000 },
    },
  ]
}

const percent = { asks: '%', limits: { min: 0, max: 1 } } as const

/** Mass, what it cost the air to the gate, and the road, of something beside the lime. */
function material(
  name: 'sand' | 'other',
  place: number,
  of: BenchData['materials'][string] | undefined,
): AmountAsked[] {
  const usual = usualOf(of, 'carbon')
  return [
    {
      ...figure(`${name}-kg`, 'kg', 'others'),
      path: `others.${place}.massKg`,
      example: name === 'sand' ? 1500 : 50,
    },
    {
      ...figure(`${name}-gate`, 'kg/kg', 'others'),
      path: `others.${place}.gateKgPerKg`,
      ...(usual ? { usual } : { optional: true }),
    },
    {
      ...figure(`${name}-km`, 'km', 'others'),
      path: `others.${place}.distanceKm`,
      optional: true,
      example: 20,
    },
  ]
}

type Label =
  | 'mortar'
  | 'lime-kg'
  | 'cao'
  | 'mgo'
  | 'fuel'
  | 'dust'
  | 'lime-km'
  | `${'sand' | 'other'}-${'kg' | 'gate' | 'km'}`
  | 'haulage'
  | 'uptake'
  | 'k'
  | 'thickness'
type Group = 'mix' | 'lime' | 'others' | 'road' | 'uptake'

const HINTED = ['cao', 'fuel', 'dust', 'uptake', 'k', 'thickness'] as const
const isHinted = (name: Label): name is (typeof HINTED)[number] => HINTED.some((one) => one === name)

const figure = (name: Label, unit: string, group: Group): AmountAsked => {
  const t = words('workOut')
  return {
    kind: 'amount',
    name,
    label: t(`carbon.fields.${name}`),
    group: t(`carbon.groups.${group}`),
    unit,
    ...(isHinted(name) && { hint: t(`carbon.hints.${name}`) }),
  }
}

/** Does the lime hold much that is not free, and was burnt out of stone all the same? */
export const isHydraulic = (free: Range | undefined): boolean => free !== undefined && free.typical < 0.7
