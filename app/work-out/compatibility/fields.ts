import {
  COMPARED,
  type ComparedMeasure,
  MORTAR_CONTENTS,
  SALT_IONS,
  WALL_CONDITIONS,
} from '#lib/mortar/compatibility-rules.ts'
import type { Typed } from '../../_http/form.ts'
import { type AmountAsked, chosenIn, type FieldAsked, type Usual, usualOf } from '../../_ui/workshop/asked.ts'
import type { BenchData } from '../../_ui/workshop/brought.ts'
import { materialOptions } from '../../_ui/workshop/options.ts'
import { words } from '../../_words/index.ts'

/** What is compared, by the name that the address gives it. */
export const MEASURES = {
  strength: 'compressiveStrength',
  vapour: 'vapourResistance',
  capillarity: 'capillarity',
} as const satisfies Record<string, ComparedMeasure>
type Measure = keyof typeof MEASURES
const NAMES = ['strength', 'vapour', 'capillarity'] as const

const EXAMPLES: Partial<Record<`${'mortar' | 'unit'}-${Measure}`, readonly [number, number]>> = {
  'unit-strength': [15, 40],
  'unit-capillarity': [0.5, 2],
}

/** Figures of mortar, unit and old mortar, what the mortar holds, what the wall is, salts found. */
export function fieldsOf(typed: Typed, data: BenchData): FieldAsked[] {
  const t = words('workOut')
  const measured = Object.fromEntries(
    Object.entries(data.materials).filter(([, { properties }]) => properties.compressiveStrength),
  )
  const of = measured[chosenIn(typed, 'of', ['', ...Object.keys(measured)], 'lime-cl90')]
  const mortar = (name: Measure) => {
    const measure = MEASURES[name]
    return measure === 'vapourResistance' ? undefined : usualOf(of, measure)
  }
  const group = (name: 'mortar' | 'contents' | 'unit' | 'old' | 'wall' | 'salts') =>
    t(`compatibility.groups.${name}`)
  return [
    {
      kind: 'choice',
      name: 'of',
      label: t('compatibility.of'),
      hint: t('compatibility.ofHint'),
      group: group('mortar'),
      options: [
        ...materialOptions({ ...data, materials: measured }, ['lime']),
        { value: 'own', label: t('compatibility.own') },
      ],
      first: 'lime-cl90',
      leads: true,
    },
    ...NAMES.map((name) => ({
      ...figure('mortar', name, mortar(name)),
      path: `mortar.measures.${MEASURES[name]}`,
      group: group('mortar'),
    })),
    ...MORTAR_CONTENTS.map(
      (content): FieldAsked => ({
        kind: 'check',
        name: `has-${content}`,
        label: t(`compatibility.contents.${content}`),
        group: group('contents'),
      }),
    ),
    ...NAMES.map((name) => ({
      ...figure('unit', name),
      path: `unit.${MEASURES[name]}`,
      group: group('unit'),
    })),
    {
      ...figure('old', 'strength'),
      path: 'oldMortar.compressiveStrength',
      group: group('old'),
    },
    ...WALL_CONDITIONS.map(
      (condition): FieldAsked => ({
        kind: 'check',
        name: `wall-${condition}`,
        label: t(`compatibility.wall.${condition}`),
        group: group('wall'),
      }),
    ),
    ...SALT_IONS.map(
      (ion): AmountAsked => ({
        kind: 'amount',
        name: `salt-${ion}`,
        path: `wall.salts.${ion}`,
        label: t(`compatibility.salts.${ion}`),
        group: group('salts'),
        unit: '%',
        optional: true,
        limits: { min: 0, max: 100 },
      }),
    ),
  ]
}

function figure(of: 'mortar' | 'unit' | 'old', name: Measure, usual?: Usual): AmountAsked {
  const t = words('workOut')
  const example = of === 'old' ? undefined : EXAMPLES[`${of}-${name}`]
  return {
    kind: 'amount',
    name: `${of}-${name}`,
    label: t(`compatibility.measures.${name}`, { of: t(`compatibility.of-what.${of}`) }),
    hint: t(`compatibility.hints.${name}`),
    unit: COMPARED[MEASURES[name]],
    bench: name === 'capillarity',
    limits: { min: 0 },
    ...(example && { example }),
    ...(usual ? { usual } : { optional: true }),
  }
}
