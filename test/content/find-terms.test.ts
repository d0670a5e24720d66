import { describe, expect, it } from 'vitest'
import { findTerms } from '#lib/content/find-terms.ts'
import { content } from '#lib/content/index.ts'
import type { GlossaryTerm } from '#lib/content/types.ts'

const make = (id: string, more: Partial<GlossaryTerm> = {}): GlossaryTerm => ({
  ...{ id, term: id, also: [], definition: '', see: [] },
  ...more,
})
const lime = make('air lime', {
  also: ['non-hydraulic lime'],
  labels: { fr: 'chaux aérienne', de: 'Luftkalk' },
})
const hydraulic = make('hydraulic lime', { labels: { fr: 'chaux hydraulique' } })
const ids = (asked: string) => findTerms([lime, hydraulic], asked).map(({ id }) => id)

describe('findTerms(terms, asked)', () => {
  it('finds a term by its name, another name, and what it is called elsewhere', () => {
    expect(ids('air lime')).toEqual(['air lime'])
    expect(ids('non-hydraulic')).toEqual(['air lime'])
    expect(ids('Luftkalk')).toEqual(['air lime'])
  })
  it('minds neither case nor accents nor the order of words', () => {
    expect(ids('CHAUX AERIENNE')).toEqual(['air lime'])
    expect(ids('lime air')).toEqual(['air lime'])
  })
  it('puts names that begin with what was asked first', () => {
    expect(ids('hydraulic lime')).toEqual(['hydraulic lime', 'air lime'])
  })
  it('finds nothing where nothing was asked or nothing goes by that name', () => {
    expect(ids('  ')).toEqual([])
    expect(ids('granite')).toEqual([])
  })
  it('takes marks of a search pattern for plain letters', () => {
    expect(ids('(lime.*')).toEqual([])
  })
  it('finds the real glossary by words of other languages', () => {
    const real = (asked: string) => findTerms(content().glossary.values(), asked).map(({ id }) => id)
    expect(real('mortier de chaux')).toContain('lime-mortar')
    expect(real('Kalkmörtel')).toContain('lime-mortar')
    expect(real('mortero de cal')).toContain('lime-mortar')
  })
})
