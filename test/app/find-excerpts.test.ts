import { createElement } from 'react'
import { renderToStaticMarkup } from 'react-dom/server'
import { describe, expect, test } from 'vitest'
import { speaking } from '#app/asked.ts'
import { contentSegment } from '#lib/search/content-pages.ts'
import { explain, type Why } from '#lib/search/explain.ts'
import { readText } from '#lib/search/read-text.ts'
import { WhyFound } from '../../app/_ui/find/why.tsx'

/** Why a page of content is found by a text, as the page of results asks it. */
function whyOf(kind: string, id: string, text: string, language: 'en' | 'es'): Why[] {
  const page = contentSegment().pages.find((one) => one.kind === kind && one.id === id)
  if (page === undefined) throw new Error(`${kind} ${id} is not in content`)
  return explain(page, readText(text), language)
}

const excerptOn = (language: 'en' | 'es', why: readonly Why[]): string =>
  /<p class="excerpt".*?<\/p>/.exec(
    speaking(language, () => renderToStaticMarkup(createElement(WhyFound, { why }))),
  )?.[0] ?? ''

describe('An excerpt of content', () => {
  test.each([
    ['in Spanish on a Spanish page', 'es', 'sotavento', '<p class="excerpt">', 'nadie del lado'],
    ['in Spanish on an English one', 'en', 'sotavento', '<p class="excerpt" lang="es">', 'nadie del lado'],
    ['in English on a Spanish page', 'es', 'downwind', '<p class="excerpt" lang="en">', 'nobody'],
    ['in English on an English one', 'en', 'downwind', '<p class="excerpt">', 'nobody'],
  ] as const)('%s says so where it differs', (_, language, typed, opening, around) => {
    const html = excerptOn(language, whyOf('guide', 'quicklime-and-slaking', typed, language))
    expect(html.startsWith(opening), html).toBe(true)
    expect(html).toContain(around)
  })

  test('is of the page in its reader\u2019s language where a word stands in both', () => {
    const languages = (['en', 'es'] as const).map(
      (language) => whyOf('guide', 'pozzolans-and-hydraulic-limes', 'NHL', language)[0]?.language,
    )
    expect(languages).toEqual(['en', 'es'])
  })

  test('of names elsewhere and titles of sources has their language', () => {
    expect(whyOf('term', 'quicklime', '"chaux vive"', 'es')[0]).toMatchObject({ language: 'fr' })
    // It is called that in Portuguese too.
    expect(whyOf('term', 'quicklime', '"cal viva"', 'es')[0]).toMatchObject({ language: 'es' })
    expect(whyOf('source', 'cointeraux-1791', 'rurale', 'es')[0]).toMatchObject({ language: 'fr' })
  })
})

test('an excerpt of what somebody wrote is in no language that is known on a Spanish page', () => {
  const page = { title: 'North wall', summary: 'Rubble.', body: 'Dry since.', marks: [], stems: ' dry sinc ' }
  const why = explain(page, readText('dry'), 'es')
  expect(excerptOn('es', why)).toMatch(/^<p class="excerpt" lang="">/)
  expect(excerptOn('en', why)).toMatch(/^<p class="excerpt">/)
})
