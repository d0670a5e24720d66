import { createElement } from 'react'
import { renderToStaticMarkup } from 'react-dom/server'
import { describe, expect, it } from 'vitest'
import { speaking } from '#app/asked.ts'
import type { Json, Path } from '#lib/entry/json.ts'
import { WorkedOnSection } from '../../app/_kept/worked-on.tsx'
import { FieldValue, valueText } from '../../app/_versions/field-value.tsx'

const ID = '01890000-0000-7000-8000-000000000001'
const ADDRESS = '/recipes/hot-lime/job?use=pointing&area=12'
const copy = {
  sheet: ID,
  of: 'The order of sand.',
  title: 'West face',
  calculation: 'job',
  address: ADDRESS,
  recipe: 'hot-lime@2',
  edition: '2026-11',
  sums: 3,
  digest: '0123456789',
  figures: [
    { label: 'Mortar to make', value: '100 L' },
    { label: 'Sand', value: '90 L' },
  ],
}
const shown = { nameOf: () => undefined, pictures: new Map() }
const drawn = (path: Path, value: Json, language: 'en' | 'es' = 'en') =>
  speaking(language, () =>
    renderToStaticMarkup(createElement(FieldValue, { kind: 'visit', path, value, shown })),
  )
/** What is read: the text alone. */
const read = (markup: string) => markup.replaceAll(/<[^>]*>/g, ' ')

describe('FieldValue of a kept sheet', () => {
  it('is drawn as on the published page, one or all', () => {
    const whole = drawn(['sheets'], [copy, { ...copy, title: 'East face' }])
    expect(whole.match(/<table/g)).toHaveLength(2)
    const one = drawn(['sheets', '[]'], copy)
    expect(one).toContain('100 L')
    expect(whole).toContain(one)
    expect(renderToStaticMarkup(createElement(WorkedOnSection, { sheets: [{ copy }] }))).toContain(one)
  })

  it('shows neither what names the sheet nor its query, but leads there', () => {
    const markup = drawn(['sheets'], [copy])
    for (const part of [ID, 'area=12']) expect(read(markup)).not.toContain(part)
    expect(markup).toContain(`href="${ADDRESS.replace('&', '&amp;')}"`)
    expect(valueText('visit', ['sheets'], [copy], shown)).not.toMatch(/01890000|area=12/)
  })

  it('has its figures alone as a table too', () => {
    const markup = drawn(['sheets', '[]', 'figures'], copy.figures)
    expect(markup.match(/<tr/g)).toHaveLength(3)
    expect(markup).toContain('<caption class="hidden-words">Figure</caption>')
  })

  it('says what an author wrote as theirs on a Spanish page', () => {
    const markup = drawn(['sheets'], [copy], 'es')
    expect(markup).toContain('<h3 lang="">West face</h3>')
    expect(markup).toContain('En ella se apoya: <span lang="">The order of sand.</span>')
    expect(drawn(['sheets', '[]', 'figures'], copy.figures, 'es')).toContain('<span lang="">90 L</span>')
  })

  it.each([[[]], [[{ sheet: ID, note: 'Older.' }]]] as const)(
    'of another shape is told in words: %o',
    (value) => {
      const markup = drawn(['sheets'], value)
      expect(markup).not.toBe('')
      expect(markup).not.toContain('<table')
      expect(markup).not.toContain(ID)
    },
  )
})
