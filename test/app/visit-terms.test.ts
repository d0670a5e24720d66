import { createElement } from 'react'
import { renderToStaticMarkup } from 'react-dom/server'
import { describe, expect, it } from 'vitest'
import { speaking } from '#app/asked.ts'
import { visitBody } from '#lib/entry/visit.ts'
import { VisitTerms } from '../../app/cases/[slug]/visit-terms.tsx'
import { makeVisit } from '../support/make.ts'

const drawn = (over: Parameters<typeof makeVisit>[0], language: 'en' | 'es' = 'en') =>
  speaking(language, () =>
    renderToStaticMarkup(createElement(VisitTerms, { body: visitBody.parse(makeVisit(over)) })),
  )
const read = (markup: string) => markup.replaceAll(/<[^>]*>/g, '')

describe('VisitTerms', () => {
  it('says nothing of what was not said', () => {
    expect(drawn({})).toBe('')
    expect(drawn({ deterioration: [] })).toBe('')
  })

  it('names the damage by its terms, each leading to its place in the list', () => {
    const markup = drawn({ deterioration: ['alteration', 'damage'] })
    expect(read(markup)).toBe('Terms for the damage: Alteration, damage')
    expect(markup).toContain('href="/terms/deterioration#alteration"')
  })

  it('names the class with what it means', () => {
    const markup = drawn({ surveyClass: 'CC1' })
    expect(read(markup)).toBe('Condition class: CC 1. Minor symptoms.')
    expect(markup).toContain('href="/terms/survey-classes#CC1"')
    expect(read(drawn({ surveyClass: 'UC1' }))).toMatch(/^Urgency class: UC 1\. /)
  })

  it('speaks Spanish on a Spanish page', () => {
    expect(read(drawn({ deterioration: ['alteration'] }, 'es'))).toBe('Términos para el daño: Alteración')
    expect(read(drawn({ surveyClass: 'CC1' }, 'es'))).toBe('Clase de estado: CC 1. Síntomas menores.')
  })

  it('leaves a term that the list has no more as it stands', () => {
    expect(read(drawn({ deterioration: ['gone-by'] }))).toBe('Terms for the damage: gone-by')
  })
})
