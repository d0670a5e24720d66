import { BOILING_C } from '#lib/mortar/constants.ts'
import type { LimeState } from '#lib/mortar/lime.ts'
import type { Range } from '#lib/mortar/range.ts'
import { SlakeCourse, slakeSays } from '../../_ui/drawings/slake-course.tsx'
import { type BenchData, termLabel } from '../../_ui/workshop/brought.ts'
import type { Given } from '../../_ui/workshop/calculation.ts'
import type { Block, Shown } from '../../_ui/workshop/shown.ts'
import { words } from '../../_words/index.ts'
import type { SlakingFound } from './calculation.ts'
import { STATES } from './fields.ts'

/** Warnings first, then heat and water, what becomes of the lime, and the way there. */
export function show(found: SlakingFound, given: Given, data: BenchData): Shown {
  const { balance, lime } = found
  return {
    blocks: [
      ...warnings(found),
      ...balanceBlocks(found),
      courseDrawn(found, given),
      ...limeBlocks(found, given, data),
      courseBlock(found),
    ],
    steps: [...balance.steps, ...lime.steps],
  }
}

/** What the figures themselves say to beware of. A sum can warn; it can never clear a batch. */
function warnings({ balance, waterKg, mostBoundKg }: SlakingFound): Block[] {
  const t = words('workOut')
  const { averageC } = balance
  const hazard = (text: string): Block => ({ kind: 'notice', tone: 'hazard', text })
  return [
    ...(averageC.typical >= BOILING_C
      ? [hazard(t('slaking.boils'))]
      : averageC.high >= BOILING_C
        ? [hazard(t('slaking.mayBoil'))]
        : []),
    ...(waterKg.low < mostBoundKg ? [hazard(t('slaking.short'))] : []),
    { kind: 'notice', tone: 'caution', text: t('slaking.average') },
  ]
}

function balanceBlocks({
  balance: { heatKJ, startC, averageC, boiledKg, freeKg },
  lime,
}: SlakingFound): Block[] {
  const t = words('workOut')
  const litres = { unit: 'L', liquid: true } as const
  return [
    {
      kind: 'figures',
      name: 'balance',
      title: t('slaking.balance'),
      figures: [
        { name: 'average', label: t('slaking.results.average'), value: averageC, unit: 'C' },
        { name: 'start', label: t('slaking.results.start'), value: startC, unit: 'C' },
        { name: 'heat', label: t('slaking.results.heat'), value: heatKJ, unit: 'kJ' },
        { name: 'bound', label: t('slaking.results.bound'), value: lime.boundWaterKg, ...litres },
        { name: 'boiled', label: t('slaking.results.boiled'), value: boiledKg, ...litres },
        { name: 'free', label: t('slaking.results.free'), value: freeKg, ...litres },
      ],
    },
  ]
}

const GROWTHS = {
  'lump-quicklime': ['lump-to-hydrate', 'lump-to-putty'],
  'ground-quicklime': ['ground-to-hydrate', 'ground-to-putty'],
} as const

function limeBlocks({ lime }: SlakingFound, given: Given, data: BenchData): Block[] {
  const t = words('workOut')
  const from = given.choice('state', STATES)
  const [asHydrate, asPutty] = GROWTHS[from]
  const growths: Partial<Record<LimeState, Range | null>> = {
    'dry-hydrate': lime.growth[asHydrate],
    putty: lime.growth[asPutty],
  }
  return [
    {
      kind: 'table',
      name: 'becomes',
      title: t('slaking.becomes'),
      columns: [
        { key: 'state', head: t('slaking.results.state') },
        { key: 'mass', head: t('slaking.results.mass') },
        { key: 'volume', head: t('slaking.results.volume') },
        { key: 'growth', head: t('slaking.results.growth') },
      ],
      stack: true,
      rows: ([from, 'dry-hydrate', 'putty'] as const).map((state) => ({
        name: state,
        cells: {
          state: termLabel(data, 'measured-states', state),
          mass: { value: lime.states[state]?.massKg ?? null, unit: 'kg' },
          volume: { value: lime.states[state]?.volumeL ?? null, unit: 'L' },
          growth: state === from ? '' : { value: growths[state] ?? null, unit: '1' },
        },
      })),
    },
    {
      kind: 'figures',
      name: 'putty',
      title: t('slaking.forPutty'),
      lead: t('slaking.forPuttyLead'),
      figures: [
        {
          name: 'water',
          label: t('slaking.results.puttyWater'),
          value: puttyWater(lime),
          unit: 'L',
          liquid: true,
        },
      ],
    },
  ]
}

/** Bound and free water of a putty together. */
function puttyWater({ boundWaterKg, puttyWaterKg }: SlakingFound['lime']): Range | null {
  if (puttyWaterKg === null) return null
  return {
    low: boundWaterKg.low + puttyWaterKg.low,
    typical: boundWaterKg.typical + puttyWaterKg.typical,
    high: boundWaterKg.high + puttyWaterKg.high,
  }
}

/** Water and temperature along the slake; the table of the course says the same in numbers. */
function courseDrawn({ course }: SlakingFound, { system }: Given): Block {
  const drawn = { points: course, system }
  return {
    kind: 'drawing',
    name: 'slake',
    title: words('workOut')('drawings.slake.title'),
    says: slakeSays(drawn),
    draw: <SlakeCourse {...drawn} />,
    drawn: { of: 'slake', system, points: course },
  }
}

/** The same balance when part of the lime has slaked; the drawing beside it says the same. */
function courseBlock({ course }: SlakingFound): Block {
  const t = words('workOut')
  return {
    kind: 'table',
    name: 'course',
    title: t('slaking.course'),
    lead: t('slaking.courseLead'),
    columns: [
      { key: 'share', head: t('slaking.results.share') },
      { key: 'temperature', head: t('slaking.results.temperature') },
      { key: 'water', head: t('slaking.results.water') },
    ],
    rows: course
      .filter((_, place) => place % 2 === 0)
      .map(({ share, averageC, freeKg }) => ({
        name: `${Math.round(share * 100)}`,
        cells: {
          share: { value: Math.round(share * 100), unit: '%' },
          temperature: { value: averageC, unit: 'C' },
          water: { value: freeKg, unit: 'L', liquid: true },
        },
      })),
  }
}
