import type { Step } from '#lib/mortar/explain.ts'
import type { Range } from '#lib/mortar/range.ts'
import type { SoilShare } from '#lib/mortar/subsoil.ts'
import type { BenchData } from '../../_ui/workshop/brought.ts'
import type { Given } from '../../_ui/workshop/calculation.ts'
import type { Block, Figure, Shown } from '../../_ui/workshop/shown.ts'
import { formatTyped } from '../../_words/format.ts'
import { words } from '../../_words/index.ts'
import type { SoilFound } from './calculation.ts'
import { showAmendment, showLime, showShrinkage } from './show-mix.ts'

type Of<W extends SoilFound['what']> = Extract<SoilFound, { what: W }>['found']

/** What was read of a soil and what follows from it. */
export function show(one: SoilFound, given: Given, data: BenchData): Shown {
  switch (one.what) {
    case 'jar':
      return showJar(one.found, given)
    case 'wet-sieve':
      return showWetSieve(one.found, given)
    case 'hydrometer':
      return showHydrometer(one.found, given)
    case 'amend':
      return showAmendment(one.found, given, data)
    case 'shrinkage':
      return showShrinkage(one.found, given.amount('allowed')?.typical)
    case 'lime':
      return showLime(one.found, data)
  }
}

const sharesBlock = (name: string, title: string, shares: readonly SoilShare[]): Block => ({
  kind: 'figures',
  name,
  title,
  figures: shares.map(
    ({ part, percent }): Figure => ({
      name: part,
      label: words('workOut')(`subsoil.parts.${part}`),
      value: percent,
      unit: '%',
    }),
  ),
})

function showJar({ byVolume, byMass, steps }: Of<'jar'>, given: Given): Shown {
  const t = words('workOut')
  return {
    steps: steps as Step[],
    blocks: [
      ...(byMass ? [sharesBlock('mass', t('subsoil.results.byMass'), byMass)] : []),
      sharesBlock('volume', t('subsoil.results.byVolume'), byVolume),
      { kind: 'notice', tone: 'caution', text: t('subsoil.results.jarReads') },
      ...(byMass
        ? [onwards('amend', { clay: clayIn(byMass) }, given)]
        : [{ kind: 'note' as const, text: t('subsoil.results.notMasses') }]),
    ],
  }
}

function showWetSieve({ shares, steps }: Of<'wet-sieve'>, given: Given): Shown {
  const t = words('workOut')
  const fines = shares.find(({ part }) => part === 'fines')?.percent
  return {
    steps,
    blocks: [
      sharesBlock('shares', t('subsoil.results.byMass'), shares),
      { kind: 'note', text: t('subsoil.results.finesNote') },
      ...(fines ? [onwards('hydrometer', { fines }, given)] : []),
    ],
  }
}

function showHydrometer({ reading, fines }: Of<'hydrometer'>, given: Given): Shown {
  const t = words('workOut')
  const { points, shares, steps } = reading
  const last = points.at(-1)
  const unread = (part: 'clay' | 'silt'): Figure => ({
    name: part,
    label: t(`subsoil.parts.${part}`),
    value: null,
    unit: '%',
  })
  const rest = { low: 100 - fines.high, typical: 100 - fines.typical, high: 100 - fines.low }
  const sand: Figure = { name: 'coarse', label: t('subsoil.parts.coarse'), value: rest, unit: '%' }
  const block = shares
    ? sharesBlock('shares', t('subsoil.results.byMass'), shares)
    : ({
        kind: 'figures',
        name: 'shares',
        title: t('subsoil.results.byMass'),
        figures: [unread('clay'), unread('silt')],
      } as const)
  return {
    steps,
    blocks: [
      { ...block, figures: [...(block.kind === 'figures' ? block.figures : []), sand] } as Block,
      ...(shares
        ? []
        : [{ kind: 'notice' as const, tone: 'note' as const, text: t('subsoil.results.tooEarly') }]),
      {
        kind: 'table',
        name: 'points',
        title: t('subsoil.results.points'),
        columns: [
          { key: 'minutes', head: t('subsoil.results.after') },
          { key: 'size', head: t('subsoil.results.size') },
          { key: 'finer', head: t('subsoil.results.finer') },
        ],
        bars: 'finer',
        rows: points.map(({ minutes, sizeMm, finer }) => ({
          name: `after-${minutes}`,
          cells: {
            minutes: { value: minutes, unit: 'min' },
            size: { value: sizeMm, unit: 'mm', bench: true },
            finer: { value: finer, unit: '%' },
          },
        })),
      },
      { kind: 'note', text: t('subsoil.results.hydrometerNote') },
      ...(shares
        ? [onwards('amend', { clay: clayIn(shares) }, given)]
        : last
          ? [{ kind: 'note' as const, text: t('subsoil.results.clayBelow') }]
          : []),
    ],
  }
}

const clayIn = (shares: readonly SoilShare[]): Range | undefined =>
  shares.find(({ part }) => part === 'clay')?.percent

/** A link to the next question, with what was found typed in. */
function onwards(
  what: 'amend' | 'hydrometer',
  found: Readonly<Record<string, Range | undefined>>,
  given: Given,
): Block {
  const t = words('workOut')
  const query = new URLSearchParams({ what, units: given.system, show: 'fields' })
  for (const [name, range] of Object.entries(found))
    if (range) query.set(name, [range.low, range.high].map((end) => rounded(Math.max(0, end))).join('–'))
  return {
    kind: 'note',
    text: t(`subsoil.onwards.${what}`),
    link: { href: `/work-out/subsoil?${query}`, words: t(`subsoil.onwards.${what}Link`) },
  }
}

const rounded = (value: number) => formatTyped(Number(value.toPrecision(3)))
