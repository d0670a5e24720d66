import { type Node, nodeAt, type ObjectNode } from '#lib/entry/tree.ts'
import type { Unit } from '../_ui/units.ts'
import { generic } from './layout.ts'
import type { PickName } from './picks.ts'

/** Where the words of a closed list come from: a vocabulary of content, or a part of our catalogue. */
export type ChoiceWords =
  | { readonly vocabulary: string }
  | { readonly catalogue: 'analysis' | 'property' | 'laboratory' | 'sourceType' | 'readingUnit' }

/** How a field is asked. */
export type Look =
  | { readonly as: 'line' | 'words' | 'day' | 'date' | 'tick' | 'answer' | 'country' | 'picture' }
  | { readonly as: 'figure' | 'range'; readonly unit: Unit | undefined }
  | {
      readonly as: 'select' | 'checks' | 'scale'
      readonly options: readonly string[]
      readonly words: ChoiceWords
    }
  /** Chosen among what this very entry, the one it is about, or its writer's account holds. */
  | { readonly as: 'own'; readonly of: OwnList }
  | { readonly as: 'pick' | 'picks'; readonly from: PickName }

const PICKED: Readonly<Record<string, PickName>> = {
  'fabric.units.*.unit': 'units',
  units: 'units',
  deterioration: 'deterioration',
  like: 'materials',
  'ingredients.*.material': 'materials',
  'works.*.mixed.ingredients.*.material': 'materials',
  'works.*.recipe': 'recipes',
  follows: 'rows',
  'source.source': 'sources',
  'sources.*.source': 'sources',
  'properties.*.source.source': 'sources',
  'laboratory.*.source.source': 'sources',
}

/** The list that a field chooses from by typing, by its name in the form; undefined for other fields. */
export const pickOf = (name: string): PickName | undefined =>
  PICKED[generic(name)] ?? PICKED[generic(name).replace(/\.\*$/, '')]

/** Lists that this very entry, the one it is about, or its writer's account holds. */
export type OwnList = 'works' | 'mortars' | 'tables' | 'surveyClasses' | 'sheets'

const OWN: Readonly<Record<string, OwnList>> = {
  work: 'works',
  'works.*.mortar': 'mortars',
  table: 'tables',
  surveyClass: 'surveyClasses',
  'sheets.*.sheet': 'sheets',
}

const UNITS: Readonly<Record<string, Unit>> = {
  'fabric.thicknessMm': 'mm',
  'works.*.areaM2': 'm2',
  'works.*.mixed.waterL': 'L',
  'works.*.mixed.sandMoisturePercent': '%',
  'works.*.mixed.hottestC': 'C',
  'works.*.mixed.hoursToUse': 'h',
  daysSinceRain: 'd',
  'sieve.*.openingMm': 'mm',
  'sieve.*.passingPercent': '%',
  'laboratory.*.ageDays': 'd',
}

/** Closed lists, by their place in a body. */
const LISTS: Readonly<Record<string, ChoiceWords>> = {
  'structure.type': { vocabulary: 'structures' },
  'fabric.wall': { vocabulary: 'wall-types' },
  'exposure.drivingRain': { vocabulary: 'driving-rain' },
  'exposure.frost': { vocabulary: 'frost' },
  'exposure.ground': { vocabulary: 'ground' },
  'exposure.aspect': { vocabulary: 'aspects' },
  'exposure.salts': { vocabulary: 'salts' },
  salts: { vocabulary: 'salts' },
  'works.*.use': { vocabulary: 'uses' },
  uses: { vocabulary: 'uses' },
  'works.*.ended.how': { vocabulary: 'work-ends' },
  'mortars.*.samples.*.analysis': { catalogue: 'analysis' },
  season: { vocabulary: 'seasons' },
  joint: { vocabulary: 'joint-states' },
  unit: { vocabulary: 'unit-states' },
  damp: { vocabulary: 'damp-states' },
  'others.*.joint': { vocabulary: 'joint-states' },
  'others.*.unit': { vocabulary: 'unit-states' },
  'others.*.damp': { vocabulary: 'damp-states' },
  'others.*.who': { vocabulary: 'observers' },
  'observer.who': { vocabulary: 'observers' },
  'readings.*.kind': { vocabulary: 'reading-kinds' },
  'readings.*.unit': { catalogue: 'readingUnit' },
  family: { vocabulary: 'families' },
  standing: { vocabulary: 'standings' },
  method: { vocabulary: 'methods' },
  role: { vocabulary: 'roles' },
  basis: { vocabulary: 'bases' },
  'properties.*.basis': { vocabulary: 'bases' },
  'properties.*.property': { catalogue: 'property' },
  'laboratory.*.property': { catalogue: 'laboratory' },
  type: { catalogue: 'sourceType' },
}

const wordsOf = (path: string): ChoiceWords => {
  const last = path.slice(path.lastIndexOf('.') + 1)
  const known =
    LISTS[path] ??
    {
      by: { vocabulary: 'measures' },
      state: { vocabulary: 'measured-states' },
      role: { vocabulary: 'roles' },
    }[last]
  if (known === undefined) throw new Error(`no words for the choices of ${path}`)
  return known
}

const SCALES = ['joint', 'unit', 'damp']
/** Longest text asked on one line. */
const LINE = 160

/** How a field of a body is asked, from what its schema says and where it stands. */
export function lookOf(tree: ObjectNode, name: string): Look {
  const path = generic(name)
  const pick = pickOf(name)
  const node = nodeAt(tree, name)
  if (pick !== undefined) return { as: node?.type === 'list' ? 'picks' : 'pick', from: pick }
  const own = OWN[path]
  if (own !== undefined) return { as: 'own', of: own }
  if (path.endsWith('country')) return { as: 'country' }
  if (path === 'photos.*.sha256') return { as: 'picture' }
  if (path === 'entry.note') return { as: 'words' }
  if (path === 'entry.slug') return { as: 'line' }
  return node === undefined ? { as: 'figure', unit: undefined } : lookOfNode(node, path)
}

function lookOfNode(node: Node, path: string): Look {
  switch (node.type) {
    case 'number':
      return { as: 'figure', unit: UNITS[path] }
    case 'range':
      return { as: 'range', unit: undefined }
    case 'flag':
      return { as: node.optional ? 'answer' : 'tick' }
    case 'constant':
      return { as: 'tick' }
    case 'choice':
      return { as: SCALES.includes(path) ? 'scale' : 'select', options: node.options, words: wordsOf(path) }
    case 'list':
      if (node.of.type !== 'choice') throw new Error(`${path} is a list of its own`)
      return { as: 'checks', options: node.of.options, words: wordsOf(path) }
    case 'object':
      throw new Error(`${path} is no field`)
    case 'text':
      if (node.form === 'day' || node.form === 'date') return { as: node.form }
      return { as: node.max > LINE ? 'words' : 'line' }
  }
}
