import { plugins } from '@citation-js/core'
import '@citation-js/plugin-bibtex'
import '@citation-js/plugin-ris'
import { describe, expect, it } from 'vitest'
import { type Cited, FORMS, isForm } from '../../app/_versions/citation-forms.ts'

// Read back by Citation.js (https://citation.js.org), a library of others that reads all three formats.
const read = (form: string, text: string): Record<string, unknown>[] =>
  plugins.input.chain(text, { forceType: form })

const CITED: Cited = {
  slug: 'ford-barn',
  revision: 3,
  title: 'Barn at the ford: 50 % lime & sand_{dry}, façade “west”',
  authors: ['Kadri Põld'],
  publishedAt: new Date('2026-02-07T10:00:00Z'),
  address: 'https://mortars.example/entries/ford-barn/versions/3',
  digest: 'a'.repeat(64),
}

// A name may hold signs that a format gives a meaning to.
const MANY: Cited = { ...CITED, authors: ['Kadri Põld', 'Tools and Sons', 'former contributor'] }

describe('citations of one version', () => {
  it('in BibTeX are read by others as they were meant, whatever signs they hold', () => {
    const [entry] = read('@bibtex/text', FORMS.bibtex.write(CITED))
    expect(entry).toMatchObject({
      title: CITED.title,
      URL: CITED.address,
      // One name in braces is not taken apart.
      author: [{ family: 'Kadri Põld' }],
    })
    expect(entry?.issued).toMatchObject({ 'date-parts': [[2026, 2]] })
  })

  it('in RIS end each line with CR LF and are read by others', () => {
    const text = FORMS.ris.write(CITED)
    expect(text.endsWith('ER  - \r\n')).toBe(true)
    const [entry] = read('@ris/file', text)
    expect(entry).toMatchObject({ title: CITED.title, URL: CITED.address, publisher: 'Putlog' })
    expect(entry?.issued).toMatchObject({ 'date-parts': [[2026, 2, 7]] })
  })

  it('in CSL-JSON are a list of one item of the schema', () => {
    expect(JSON.parse(FORMS['csl-json'].write(CITED))).toEqual([
      {
        id: 'ford-barn-3',
        type: 'webpage',
        title: CITED.title,
        author: [{ literal: 'Kadri Põld' }],
        issued: { 'date-parts': [[2026, 2, 7]] },
        'container-title': 'Putlog',
        version: 'revision 3',
        URL: CITED.address,
        note: `SHA-256 ${CITED.digest}`,
      },
    ])
  })

  it('in plain text name author, year, title, version and address', () => {
    expect(FORMS.text.write(CITED)).toBe(
      `Kadri Põld (2026). ${CITED.title}, revision 3. Putlog. ${CITED.address}\n`,
    )
  })

  it('name everyone who wrote in it, in their order, each as one name', () => {
    const [tex] = read('@bibtex/text', FORMS.bibtex.write(MANY))
    expect(tex?.author).toEqual(MANY.authors.map((family) => ({ family })))
    expect(
      FORMS.ris
        .write(MANY)
        .split('\r\n')
        .filter((line) => line.startsWith('AU')),
    ).toEqual(MANY.authors.map((name) => `AU  - ${name}`))
    expect(read('@ris/file', FORMS.ris.write(MANY))[0]?.author).toHaveLength(3)
    expect(JSON.parse(FORMS['csl-json'].write(MANY))[0].author).toEqual(
      MANY.authors.map((literal) => ({ literal })),
    )
    expect(FORMS.text.write(MANY)).toContain('Kadri Põld, Tools and Sons and former contributor (2026). ')
  })

  it('come in these forms and no other', () => {
    expect(['text', 'bibtex', 'ris', 'csl-json', 'toString', ''].filter(isForm)).toEqual([
      'text',
      'bibtex',
      'ris',
      'csl-json',
    ])
  })
})
