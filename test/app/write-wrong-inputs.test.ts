import { describe, expect, it } from 'vitest'
import { SHAPES, type WrittenKind } from '#lib/entry/body.ts'
import { fullLabel, numberIn, sentenceOf } from '../../app/_write/labels.ts'
import { generic, LAYOUTS, stepOf } from '../../app/_write/layout.ts'
import type { Part } from '../../app/_write/layouts/parts.ts'
import { readForm } from '../../app/_write/read.ts'

const KINDS = Object.keys(SHAPES) as WrittenKind[]

/** Every fault of what was typed, by its field, as its form says it. */
function sentences(kind: WrittenKind, typed: Record<string, string>): [field: string, sentence: string][] {
  const { faults } = readForm(kind, typed, (_, text) => (/^[a-z][a-z-]+$/.test(text) ? text : undefined))
  return faults.map((fault) => {
    const value = typeof fault.value === 'number' ? fault.value : (typed[fault.field] ?? fault.value)
    const label = fullLabel(fault.field, numberIn(typed))
    return [fault.field, sentenceOf({ ...fault, ...(value !== undefined && { value }) }, label)]
  })
}

const said = (kind: WrittenKind, field: string, text: string, more: Record<string, string> = {}) =>
  sentences(kind, { ...more, [field]: text })
    .filter(([name]) => name === field)
    .map(([, sentence]) => sentence)

describe('what a tired mason types', () => {
  it.each([
    [
      'fabric.thicknessMm',
      '60 cm',
      'Thickness: “60 cm” has more in it than a number. Leave the unit off and give the figure in mm.',
    ],
    [
      'works.0.areaM2',
      '12 m²',
      'Work 1, Area: “12 m²” has more in it than a number. Leave the unit off and give the figure in m².',
    ],
    [
      'works.0.areaM2',
      'about 12',
      'Work 1, Area: “about 12” has more in it than a number. Give the number alone, in m².',
    ],
    [
      'works.0.mixed.ingredients.0.parts',
      '3-2',
      'Work 1, Ingredient 1, Parts: “3-2” runs from high to low. Give the lower figure first.',
    ],
    [
      'works.0.started',
      '31 February 2019',
      'Work 1, Begun: “31 February 2019” is not in the calendar. Mend the day or the month.',
    ],
    [
      'works.0.started',
      '2/3/2019',
      'Work 1, Begun: “2/3/2019” can be read as two days. Write it such as 2019-06-12, 12.6.2019 or 12 June 2019.',
    ],
    [
      'title',
      'x'.repeat(10_000),
      'Title: too long. Shorten it to 120 characters or fewer; none of it is lost meanwhile.',
    ],
  ])('in a case, %s: %s', (field, text, sentence) => {
    expect(said('case', field, text)).toEqual([sentence])
  })

  it('is told once where both ends of a figure are wrong', () => {
    expect(said('recipe', 'ingredients.0.parts', '0')).toEqual([
      'Ingredient 1, Parts: 0 is not above zero. Give a number above zero.',
    ])
  })

  it('is told of a fraction where whole ones are counted', () => {
    expect(said('visit', 'daysSinceRain', '2,5')).toEqual([
      'Days since it last rained: “2.5” is not a whole number. Give digits alone, such as 5.',
    ])
  })

  it('is told in which field figures are out of order, and which source is missing', () => {
    const figure = { property: 'bulkDensity', low: '900', typical: '800', high: '700', basis: 'read' }
    const typed = Object.fromEntries(
      Object.entries(figure).map(([key, text]) => [`properties.0.${key}`, text]),
    )
    const found = new Map(sentences('material', typed))
    expect(found.get('properties.0.low')).toMatch(/^Figure 1, Lowest: the figures are out of order/)
    expect(found.get('properties.0.source.source')).toMatch(/^Figure 1, Source: /)
  })
})

/** The fields of a form, items as `*`. */
const asked = (parts: readonly Part[], within = ''): string[] =>
  parts.flatMap((part) =>
    typeof part === 'string' ? [`${within}${part}`] : asked(part.parts, `${within}${part.list}.*.`),
  )

const HOSTILE = [
  '60 cm',
  '3–2',
  '1,500',
  '31 February 2019',
  '🧱👨‍👩‍👧',
  'wörds '.repeat(2000),
  '-1',
  '9'.repeat(30),
  '0',
]

describe.each(KINDS)('whatever is typed into any field of a %s', (kind) => {
  const fields = new Set(LAYOUTS[kind].flatMap(({ parts }) => asked(parts)))

  it('each fault names a field that its step asks', () => {
    // A kept sheet is chosen, and the rest of it copied from there.
    const typed = [...fields].filter((name) => !name.startsWith('sheets.'))
    for (const field of typed.map((name) => name.replaceAll('*', '0')))
      for (const text of HOSTILE)
        for (const [name, sentence] of sentences(kind, { case: 'a-wall', [field]: text })) {
          const at = generic(name).replace(/\.\*$/, '')
          const known = fields.has(generic(name)) || fields.has(at)
          expect([field, text.slice(0, 20), name, known]).toEqual([field, text.slice(0, 20), name, true])
          const step = LAYOUTS[kind].find(({ id }) => id === stepOf(kind, name))
          expect(asked(step?.parts ?? []).some((one) => one === generic(name) || one === at)).toBe(true)
          expect(sentence).toMatch(/^\p{Lu}.*[:,] ./u)
        }
  })
})
