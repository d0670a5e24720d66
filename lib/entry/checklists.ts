import type { WrittenKind } from './body.ts'

/** Everything that a reviewer may be asked to look at. */
export const CHECKS = [
  'no-address',
  'no-people',
  'fabric-described',
  'dates-plausible',
  'mixed-as-told',
  'interests-declared',
  'harm-cautious',
  'states-together',
  'readings-method',
  'photos-clear',
  'alt-texts',
  'parts-measured',
  'rows-followed',
  'sources-place',
  'hazards-said',
  'figures-basis',
  'no-maker',
  'source-exists',
  'source-copy',
  'row-in-source',
  'row-state',
  'row-own-witness',
] as const
export type Check = (typeof CHECKS)[number]

/** What a reviewer looks at before publishing an entry of each kind. */
export const CHECKLISTS = {
  case: [
    'no-address',
    'no-people',
    'fabric-described',
    'dates-plausible',
    'mixed-as-told',
    'interests-declared',
    'harm-cautious',
  ],
  visit: [
    'states-together',
    'dates-plausible',
    'readings-method',
    'no-people',
    'photos-clear',
    'alt-texts',
    'harm-cautious',
  ],
  recipe: ['parts-measured', 'rows-followed', 'sources-place', 'hazards-said', 'interests-declared'],
  material: ['figures-basis', 'sources-place', 'no-maker', 'hazards-said'],
  source: ['source-exists', 'source-copy'],
  row: ['row-in-source', 'row-state', 'row-own-witness', 'sources-place', 'hazards-said'],
} as const satisfies Record<WrittenKind, readonly Check[]>
