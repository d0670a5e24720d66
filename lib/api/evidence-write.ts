import { LAB_UNITS } from '#lib/entry/laboratory.ts'
import type { Agreement, EndPoint } from '#lib/evidence/index.ts'
import type { Size } from '#lib/search/works.ts'
import type { EvidenceAnswer } from './evidence-answer.ts'
import type { Behind } from './evidence-behind.ts'
import type { Comparison } from './evidence-compare.ts'
import type { Drying, FoundShare } from './evidence-drying.ts'
import type { EndPointFigures } from './evidence-figures.ts'
import type { Evidence } from './evidence-read.ts'

/** The figures as the JSON interface gives them. */
export function writeEvidence(
  evidence: Evidence,
): Omit<EvidenceAnswer, 'asOf' | 'chosenByOutcome' | 'cases' | 'laboratory' | 'comparisons'> {
  const { agreement, endPoints, setAside, states } = evidence
  return {
    size: { ...writeSize(evidence.size), longestDays: evidence.size.longestDays },
    invented: evidence.invented,
    interested: evidence.interested,
    contradicted: evidence.contradicted,
    reported: { ...evidence.reported },
    mixed: { ...evidence.mixed },
    setAside: { ...setAside, leftOut: [...setAside.leftOut] },
    states: [...states],
    drying: { dry: writeDrying(evidence.drying.dry), again: writeDrying(evidence.drying.again) },
    agreement: {
      visits: agreement.visits,
      scales: agreement.scales.map(({ fleiss, cohen, ...rest }) => ({
        ...rest,
        fleiss: writeAgreement(fleiss),
        cohen: writeAgreement(cohen),
      })),
    },
    endPoints: endPoints.map(writeFigures),
  }
}

/** The cases and the laboratory results behind the figures, as the JSON interface gives them. */
export const writeBehind = (
  { total, cases, quality, laboratory }: Behind,
  list: string,
): Pick<EvidenceAnswer, 'cases' | 'laboratory'> => ({
  cases: { total, quality: { ...quality }, first: [...cases], list },
  laboratory: laboratory.map(({ results, ...one }) => ({
    ...one,
    results: results.map((result) => ({ ...result, unit: LAB_UNITS[result.property] })),
  })),
})

export const writeComparison = (
  endPoint: EndPoint,
  { groups, pairs, overlaps, test, traits }: Comparison,
): EvidenceAnswer['comparisons'][number] => ({
  endPoint,
  groups: groups.map(({ key, size, invented, figures }) => ({
    key,
    size: writeSize(size),
    invented,
    figures: writeFigures(figures),
  })),
  pairs: pairs.map(({ differences, ...pair }) => ({
    ...pair,
    differences: differences.map((one) => ({ ...one, years: one.years as Years })),
  })),
  overlaps: overlaps.map((one) => ({ ...one })),
  test: test && { ...test, groups: [...test.groups] },
  traits: traits.map(({ values, ...trait }) => ({
    ...trait,
    values: values.map(({ value, shares }) => ({ value, shares: { ...shares } })),
  })),
})

type Years = EvidenceAnswer['states'][number]['years']

const writeDrying = ({ horizons, ...rest }: Drying) => ({ ...rest, horizons: horizons.map(writeShare) })

const writeShare = ({ years, low, high, bandLow, bandHigh }: FoundShare) => ({
  years: years as Years,
  ...{ low, high, bandLow, bandHigh },
})

const writeSize = ({ works, walls, buildings, watchedDays }: Size) => ({
  works,
  walls,
  buildings,
  watchedDays,
})

function writeFigures(figures: EndPointFigures): EvidenceAnswer['endPoints'][number] {
  const { curve, horizons, lost, incidence, competing, ...rest } = figures
  return {
    ...rest,
    competing: [...competing],
    watching: { ...rest.watching },
    curve: curve && {
      masses: [...curve.turnbull.masses],
      points: [...curve.points],
      logLikelihood: curve.turnbull.logLikelihood,
      excess: curve.turnbull.excess,
      converged: curve.turnbull.converged,
    },
    horizons: horizons.map((point) => ({ ...point, years: point.years as Years })),
    lost: lost && {
      horizons: lost.horizons.map(({ years, allChanged, noneChanged }) => ({
        years: years as Years,
        allChanged: allChanged.low,
        noneChanged: noneChanged.high,
      })),
    },
    incidence: incidence.map(({ cause, horizons: at }) => ({
      cause,
      horizons: at.map(writeShare),
    })),
  }
}

const writeAgreement = (agreement: Agreement | null) =>
  agreement && {
    kappa: agreement.kappa,
    low: agreement.low,
    high: agreement.high,
    agreed: agreement.agreed,
    byChance: agreement.byChance,
  }
