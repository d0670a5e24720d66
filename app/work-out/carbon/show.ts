import type { Step } from '#lib/mortar/explain.ts'
import type { Range } from '#lib/mortar/range.ts'
import type { BenchData } from '../../_ui/workshop/brought.ts'
import type { Given } from '../../_ui/workshop/calculation.ts'
import type { Block, Shown } from '../../_ui/workshop/shown.ts'
import { words } from '../../_words/index.ts'
import { type CarbonFound, type UnknownPart, yearsOf } from './calculation.ts'
import { isHydraulic } from './fields.ts'

/** What is given off, part by part, and what comes back. A part that is not known leaves the sum open. */
export function show({ sheet, unknown, timed }: CarbonFound, given: Given, data: BenchData): Shown {
  const t = words('workOut')
  const known = (part: UnknownPart, value: Range) => (unknown.includes(part) ? null : value)
  const open = unknown.length > 0
  const kg = (name: 'calcination' | 'fuel' | 'others' | 'transport', value: Range | null) => ({
    name,
    label: t(`carbon.results.${name}`),
    value,
    unit: 'kg',
  })
  const lime = data.materials[given.chosen('lime')]?.properties.freeCaO
  const blocks: Block[] = [
    ...(open
      ? [
          {
            kind: 'notice',
            tone: 'caution',
            text: t('carbon.results.open', {
              parts: unknown.map((part) => t(`carbon.unknown.${part}`)).join(', '),
            }),
          } as const,
        ]
      : []),
    ...(isHydraulic(lime) && !given.typed('cao')
      ? [{ kind: 'notice', tone: 'caution', text: t('carbon.results.combined') } as const]
      : []),
    {
      kind: 'figures',
      name: 'released',
      title: t('carbon.results.title'),
      figures: [
        {
          name: 'released',
          label: t(open ? 'carbon.results.knownParts' : 'carbon.results.released'),
          value: sheet.released,
          unit: 'kg',
        },
        {
          name: 'per-m3',
          label: t(open ? 'carbon.results.knownPerM3' : 'carbon.results.perM3'),
          value: sheet.perM3,
          unit: 'kg/m3',
        },
        kg('calcination', sheet.calcination),
        kg('fuel', known('fuel', sheet.fuel)),
        kg('others', known('gate', sheet.others)),
        kg('transport', known('road', sheet.transport)),
      ],
    },
    uptakeTable({ sheet, unknown, timed }, given),
    { kind: 'note', text: t('carbon.results.note') },
  ]
  return { blocks, steps: sheet.steps.flatMap((step) => honest(step, unknown)) }
}

const PART_OF: Readonly<Record<string, UnknownPart>> = { C_f: 'fuel', C_o: 'gate', C_t: 'road' }

/** A line of working that rests on no figure is left out, and the sum says that it is one of known parts. */
function honest(step: Step, unknown: readonly UnknownPart[]): Step[] {
  const part = PART_OF[step.symbol]
  if (part !== undefined && unknown.includes(part)) return []
  return [step.symbol === 'C' && unknown.length > 0 ? { ...step, means: 'analysis.carbonKnown' } : step]
}

function uptakeTable({ sheet, unknown, timed }: CarbonFound, given: Given): Block {
  const t = words('workOut')
  const open = unknown.length > 0
  const row = (name: string, age: string, found: { takenKg: Range; leftKg: Range } | undefined) => ({
    name,
    cells: {
      age,
      taken: { value: found?.takenKg ?? null, unit: 'kg' },
      left: { value: open ? null : (found?.leftKg ?? null), unit: 'kg' },
    },
  })
  return {
    kind: 'table',
    name: 'uptake',
    title: t('carbon.results.uptake'),
    lead: t(timed ? 'carbon.results.uptakeLead' : 'carbon.results.untimed'),
    stack: true,
    bars: 'taken',
    columns: [
      { key: 'age', head: t('carbon.results.age') },
      { key: 'taken', head: t('carbon.results.taken') },
      { key: 'left', head: t('carbon.results.left') },
    ],
    rows: [
      ...yearsOf(given).map((years, place) =>
        row(`age-${place + 1}`, t('carbon.results.years', { years }), sheet.uptake[place]),
      ),
      row('end', t('carbon.results.end'), sheet.inTheEnd),
    ],
  }
}
