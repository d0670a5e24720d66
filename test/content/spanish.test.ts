import { describe, expect, test } from 'vitest'
import { MARKED, readMarks } from '#lib/cli/spanish.ts'
import { content } from '#lib/content/index.ts'
import { comparePairs, differingFigures, figuresIn, markPairs, type Pair } from '#lib/content/pairs.ts'
import { lackingSpanish } from '#lib/content/spanish.ts'

const keys = (pairs: readonly Pair[]) => pairs.map(({ key }) => key)

describe.each(MARKED)('the Spanish that $file marks', ({ file, pairs }) => {
  const { stale, unmarked, gone } = comparePairs(pairs(), readMarks(file))

  test('follows every change of its English', () => {
    expect(keys(stale), 'their English changed: change the Spanish, then npm run spanish').toEqual([])
  })

  test('is marked, all of it and no more', () => {
    expect([...keys(unmarked), ...gone], 'npm run spanish').toEqual([])
  })

  test('writes the numbers of its English', () => {
    expect(keys(differingFigures(pairs()))).toEqual([])
  })
})

test('nothing is left to say in Spanish but names that its trade has no word for', () => {
  expect(lackingSpanish(content())).toEqual(
    [
      'pargetting',
      'torching',
      'tuck-pointing',
      'blue-lias-lime',
      'grey-stone-lime',
      'kankar',
      'perch',
      'rod',
    ].map((id) => `glossary/${id}.label`),
  )
})

test('no two words of the glossary have one name in Spanish', () => {
  const names = [...content().glossary.values()].flatMap(({ labels }) => [labels?.es ?? []].flat())
  expect(names.filter((name, i) => names.indexOf(name) !== i)).toEqual([])
})

test('a material that the glossary explains is called there as it is by itself', () => {
  const { glossary, materials } = content()
  const termOf = new Map([...glossary.values()].map((one) => [one.term, one]))
  const both = [...materials.values()].flatMap(({ label, names }) => {
    const term = termOf.get(label)
    return term === undefined ? [] : [{ label, own: names.es?.[0], there: [term.labels?.es ?? []].flat()[0] }]
  })
  expect(both.length).toBeGreaterThan(10)
  expect(both.filter(({ own, there }) => own !== there)).toEqual([])
})

describe('comparePairs(pairs, marks)', () => {
  const sound = { key: 'sound', english: 'Full to the face.', spanish: 'Lleno hasta la cara.' }
  const lost = { key: 'lost', english: 'Washed out.', spanish: 'Lavado.' }
  const marks = markPairs([sound, lost], {}, new Set())
  const none = { stale: [], unmarked: [], gone: [] }
  const english = { ...sound, english: 'Full to within 5 mm of the face.' }
  const both = { ...english, spanish: 'Lleno hasta 5 mm de la cara.' }

  test.each([
    ['nothing where nothing changed', [sound, lost], none],
    ['a text whose English changed alone', [english, lost], { ...none, stale: [english] }],
    ['one whose Spanish changed too', [both, lost], { ...none, unmarked: [both] }],
    ['a new one', [sound, lost, { ...lost, key: 'open' }], { ...none, unmarked: [{ ...lost, key: 'open' }] }],
    ['one that is gone', [sound], { ...none, gone: ['lost'] }],
  ])('tells %s', (_, pairs, told) => {
    expect(comparePairs(pairs, marks)).toEqual(told)
  })

  test('a stale text is marked only where it was looked over', () => {
    const now = [english, lost]
    expect(comparePairs(now, markPairs(now, marks, new Set())).stale).toEqual([english])
    expect(comparePairs(now, markPairs(now, marks, new Set(['sound'])))).toEqual(none)
  })
})

describe('figuresIn(text, language)', () => {
  test.each([
    ['about 1,150 kJ, 0.5 mm and 5, 10', 'en', [0.5, 5, 10, 1150]],
    ['unos 1150 kJ, 0,5 mm y 5, 10', 'es', [0.5, 5, 10, 1150]],
    ['12.500 kilos; NHL 3,5', 'es', [3.5, 12_500]],
  ] as const)('%s', (text, language, figures) => {
    expect(figuresIn(text, language)).toEqual(figures)
  })

  test('another figure in Spanish is found', () => {
    const pair = { key: 'a', english: 'under 0.5 mm', spanish: 'menos de 5 mm' }
    expect(differingFigures([pair])).toEqual([pair])
  })
})
