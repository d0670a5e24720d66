import fc from 'fast-check'

const scalar = fc.oneof(fc.constantFrom('a', 'b', 'c'), fc.integer({ min: 0, max: 3 }), fc.boolean())
const range = fc.record({ low: fc.integer({ min: 0, max: 2 }), high: fc.integer({ min: 3, max: 5 }) })
const work = fc.record(
  {
    id: fc.constantFrom('p', 'q', 'r'),
    title: scalar,
    parts: range,
    salts: fc.array(scalar, { maxLength: 2 }),
  },
  { requiredKeys: ['id'] },
)

/** Bodies in little: every form that a real one has, over few values, so that two of them often agree in part. */
export const bodies = fc.record(
  {
    title: scalar,
    figure: fc.record({ property: scalar, low: scalar, typical: scalar, high: scalar }),
    place: fc.record({ region: scalar, latitude: scalar, longitude: scalar }, { requiredKeys: [] }),
    works: fc.uniqueArray(work, { selector: ({ id }) => id, maxLength: 3 }),
    ingredients: fc.array(fc.record({ material: fc.constantFrom('x', 'y'), note: scalar }), { maxLength: 3 }),
    salts: fc.array(scalar, { maxLength: 3 }),
  },
  { requiredKeys: ['title'] },
)
