import { expect, it } from 'vitest'
import { nameInForm } from '../../app/_write/returned.ts'
import { makeCase, makeWork } from '../support/make.ts'

const body = JSON.parse(
  JSON.stringify(
    makeCase({
      works: [
        makeWork({ id: 'render' }),
        makeWork({
          mixed: {
            ingredients: [
              { material: 'lime-fat', parts: { low: 1, high: 1 }, by: 'volume', state: 'putty' },
              { material: 'sand-pit', parts: { low: 3, high: 3 }, by: 'volume', state: 'dry' },
            ],
          },
        }),
      ],
    }),
  ),
)

it.each([
  [['title'], 'title'],
  [['place', 'region'], 'place.region'],
  [['earlier'], 'earlier'],
  [['works', '[repointing]', 'areaM2'], 'works.1.areaM2'],
  [
    ['works', '[repointing]', 'mixed', 'ingredients', '[sand-pit]', 'parts'],
    'works.1.mixed.ingredients.1.parts',
  ],
  [['fabric', 'units', '[limestone]', 'unit'], 'fabric.units.0.unit'],
  // What is not there any more is shown at the first.
  [['works', '[gone]', 'areaM2'], 'works.0.areaM2'],
])('nameInForm(%j) is %s', (path, name) => {
  expect(nameInForm(path, body)).toBe(name)
})
