import type { Size } from '#lib/mortar/sieve.ts'
import { FINENESS_DEFINITIONS } from '#lib/mortar/sieve-series.ts'
import type { BenchData } from '../../_ui/workshop/brought.ts'
import type { Given } from '../../_ui/workshop/calculation.ts'
import type { Block, Figure, Shown } from '../../_ui/workshop/shown.ts'
import { words } from '../../_words/index.ts'
import type { SieveFound } from './calculation.ts'
import { showBlend } from './show-blend.ts'
import { chartOf, heldBlocks, keptFigure } from './show-held.ts'
import { weighedBlocks } from './show-weighed.ts'
import { STACKS, type Stack, sieveName } from './stacks.ts'

type Graded = Extract<SieveFound, { what: 'grade' }>

/** What was found of a sand, or of a blend. */
export function show(found: SieveFound, given: Given, _: BenchData): Shown {
  if (found.what === 'blend') return showBlend(found, given)
  if (found.what === 'grade')
    return { blocks: gradeBlocks(found, given.choice('stack', STACKS)), steps: found.grading.steps }
  const t = words('workOut')
  const percent = found.fineShare * 100
  const share = (name: 'finer' | 'coarser', value: number): Figure => ({
    name,
    label: t(`sieve.results.${name}`),
    value: Number(value.toPrecision(4)),
    unit: '%',
  })
  return {
    steps: [],
    blocks: [
      {
        kind: 'figures',
        name: 'shares',
        title: t('sieve.results.sharesTitle'),
        figures: [share('finer', percent), share('coarser', 100 - percent)],
      },
      found.within
        ? { kind: 'note', text: t('sieve.results.modulusNote') }
        : { kind: 'notice', tone: 'caution', text: t('sieve.results.modulusBeyond') },
    ],
  }
}

function gradeBlocks({ grading, held }: Graded, stack: Stack): Block[] {
  const t = words('workOut')
  const openings = grading.rows.map(({ openingMm }) => openingMm)
  return [
    {
      kind: 'figures',
      name: 'grading',
      title: t('sieve.results.title'),
      figures: [...figuresOf(grading, stack), ...keptFigure(held)],
    },
    ...weighedBlocks(grading),
    chartOf(openings, [{ label: t('sieve.chart.sand'), curve: grading.rows, drawn: 'main' }], held, stack),
    {
      kind: 'table',
      name: 'sieves',
      title: t('sieve.results.sieves'),
      lead: t('sieve.results.sievesLead'),
      columns: [
        { key: 'sieve', head: t('sieve.results.sieve') },
        { key: 'retained', head: t('sieve.results.retained') },
        { key: 'cumulative', head: t('sieve.results.cumulative') },
        { key: 'passing', head: t('sieve.results.passing') },
      ],
      rows: grading.rows.map(({ openingMm, retained, cumulative, passing }) => ({
        name: `at-${openingMm}`,
        cells: {
          sieve: sieveName(openingMm, stack),
          retained: { value: retained, unit: '%' },
          cumulative: { value: cumulative, unit: '%' },
          passing: { value: passing, unit: '%' },
        },
      })),
    },
    ...heldBlocks(held, stack),
    { kind: 'note', text: t('sieve.results.rangeNote') },
  ]
}

function figuresOf(grading: Graded['grading'], stack: Stack): Figure[] {
  const t = words('workOut')
  const moduli = grading.finenessModuli.map(({ set, value }): Figure => {
    const definition = FINENESS_DEFINITIONS.find(({ id }) => id === set)
    return {
      name: `modulus-${set}`,
      label: t(`sieve.modulus.${set}`),
      value,
      unit: '1',
      ...(definition && { basis: definition.basis, source: definition.source }),
    }
  })
  const none: Figure = {
    name: 'modulus',
    label: t('sieve.modulus.none'),
    value: null,
    unit: '1',
    note: t('sieve.modulus.noneNote'),
  }
  const size = (name: 'd10' | 'd30' | 'd50' | 'd60', found: Size): Figure => ({
    name,
    label: t(`sieve.sizes.${name}`),
    unit: 'mm',
    bench: true,
    ...(found.kind === 'size'
      ? { value: found.mm }
      : { value: null, note: t(`sieve.sizes.${found.kind}`, { sieve: sieveName(found.mm, stack) }) }),
  })
  return [
    ...(moduli.length === 0 ? [none] : moduli),
    size('d10', grading.d10),
    size('d30', grading.d30),
    size('d50', grading.d50),
    size('d60', grading.d60),
    { name: 'cu', label: t('sieve.sizes.cu'), value: grading.uniformity, unit: '1' },
    { name: 'cc', label: t('sieve.sizes.cc'), value: grading.curvature, unit: '1' },
  ]
}
