import { LAST, type Layout, SHEETS } from './parts.ts'

/** Place, fabric, work and mortar are all that a case needs; the rest is welcome later. */
export const CASE: Layout = [
  {
    id: 'place',
    needed: true,
    parts: [
      'title',
      'place.country',
      'place.region',
      'place.locality',
      'structure.type',
      'structure.century',
      'place.latitude',
      'place.longitude',
      'place.ownerAgreedPosition',
    ],
  },
  {
    id: 'fabric',
    needed: true,
    parts: [
      { list: 'fabric.units', parts: ['unit', 'localName', 'note'], ready: 1 },
      'fabric.wall',
      'fabric.thicknessMm',
    ],
  },
  {
    id: 'work',
    needed: true,
    parts: [
      {
        list: 'works',
        parts: ['title', 'use', 'started', 'finished', 'areaM2', 'structural'],
        ready: 1,
      },
    ],
  },
  {
    id: 'mortar',
    needed: true,
    parts: [
      {
        list: 'works',
        items: 'kept',
        parts: [
          'recipe',
          {
            list: 'mixed.ingredients',
            parts: ['material', 'parts', 'by', 'state'],
            ready: 1,
          },
        ],
      },
      {
        list: 'mortars',
        parts: [
          'where',
          'phase',
          'description',
          { list: 'samples', parts: ['location', 'analysis', 'finding'] },
        ],
        ready: 1,
      },
    ],
  },
  {
    id: 'exposure',
    parts: [
      'exposure.drivingRain',
      'exposure.frost',
      'exposure.ground',
      'exposure.aspect',
      'exposure.salts',
      'exposure.note',
    ],
  },
  { id: 'earlier', parts: [{ list: 'earlier', parts: ['what', 'when', 'condition'], ready: 1 }] },
  {
    id: 'mixed',
    parts: [
      {
        list: 'works',
        items: 'kept',
        parts: [
          'mortar',
          'mixed.waterL',
          'mixed.sandMoisturePercent',
          'mixed.hottestC',
          'mixed.hoursToUse',
          'mixed.note',
          {
            list: 'mixed.ingredients',
            items: 'kept',
            parts: ['supplier', 'batch', 'certificate', 'parts.typical'],
          },
          'weather',
          'protection',
          'tools',
        ],
      },
    ],
  },
  { id: 'ended', parts: [{ list: 'works', items: 'kept', parts: ['ended.how', 'ended.on', 'ended.note'] }] },
  { id: 'harm', parts: ['harm.words', 'harm.protectedFabric'] },
  { id: 'worked', parts: [SHEETS] },
  { id: 'check', needed: true, parts: ['summary', 'recordedOn', ...LAST] },
]
