import { createElement } from 'react'
import { renderToStaticMarkup } from 'react-dom/server'
import { describe, expect, test } from 'vitest'
import { speaking } from '#app/asked.ts'
import { content } from '#lib/content/index.ts'
import { nameOf, otherNames } from '../../app/_ui/label.ts'
import { NamesElsewhere } from '../../app/_ui/names-elsewhere.tsx'
import { Said, said } from '../../app/_ui/said.tsx'
import { Name, NameIn } from '../../app/_ui/term-name.tsx'
import { English, EnglishIn, Written, WrittenIn } from '../../app/_ui/written.tsx'
import { Scale } from '../../app/_write/choices.tsx'
import { pickTerms } from '../../app/_write/picks.ts'
import { FoundList } from '../../app/find/found-list.tsx'
import { Found } from '../../app/glossary/find.tsx'
import { Scales } from '../../app/record/scales.tsx'

const drawn = (element: () => ReturnType<typeof createElement>, language: 'en' | 'es' = 'es') =>
  speaking(language, () => renderToStaticMarkup(element()))
const escaped = (text: string) => renderToStaticMarkup(createElement('i', null, text)).slice(3, -4)

const both = { definition: 'Burned limestone.', es: { definition: 'Caliza cocida.' } }
const bare = { definition: 'Burned limestone.' }

describe('Said', () => {
  const of = (thing: typeof both | typeof bare) => () =>
    createElement(Said, { of: thing, field: 'definition' })

  test('says what content says in the language of the page', () => {
    expect(drawn(of(both), 'en')).toBe('Burned limestone.')
    expect(drawn(of(both))).toBe('Caliza cocida.')
    expect(speaking('es', () => said(both, 'definition'))).toBe('Caliza cocida.')
  })

  test('says English where there is nothing else, and marks it on a page in another language alone', () => {
    expect(drawn(of(bare), 'en')).toBe('Burned limestone.')
    expect(drawn(of(bare))).toBe('<span lang="en">Burned limestone.</span>')
  })
})

describe('On a Spanish page', () => {
  const say = (text: string) => `Fila: ${text}.`

  test('words that somebody wrote are in no language that is known', () => {
    expect(drawn(() => createElement(Written, null, 'Muro norte'))).toBe('<span lang="">Muro norte</span>')
    expect(drawn(() => WrittenIn({ say, children: 'Muro norte' }))).toBe(
      'Fila: <span lang="">Muro norte</span>.',
    )
    const [found] = [{ kind: 'case', id: 'x', title: 'Muro norte', summary: 'De tapia.' } as const]
    const html = drawn(() =>
      createElement(FoundList, { pages: [{ ...found, entry: true, invented: false, why: [] }] }),
    )
    expect([...html.matchAll(/lang="([^"]*)"[^>]*>([^<]*)/g)].map(([, ...told]) => told)).toEqual([
      ['', 'Muro norte'],
      ['', 'De tapia.'],
    ])
  })

  test('words of content that have no Spanish are in English', () => {
    expect(drawn(() => createElement(English, null, 'North wall'))).toBe('<span lang="en">North wall</span>')
    expect(drawn(() => EnglishIn({ say, children: 'North wall' }))).toBe(
      'Fila: <span lang="en">North wall</span>.',
    )
  })

  test('neither is marked on an English page', () => {
    for (const part of [Written, English])
      expect(drawn(() => createElement(part, null, 'Wall'), 'en')).toBe('Wall')
  })
})

describe('names', () => {
  const labels = { fr: 'tamis', es: ['tamiz', 'criba'] }

  test('are those of the language, the usual one first and the others after it', () => {
    const named = () => [nameOf('Sieve', labels), ...otherNames(['Screen'], labels)]
    expect(named()).toEqual(['Sieve', 'Screen'])
    expect(speaking('es', named)).toEqual(['Tamiz', 'criba'])
  })

  test('are marked as English where no other is sure', () => {
    expect(drawn(() => createElement(Name, { label: 'Rod' }))).toBe('<span lang="en">Rod</span>')
    const say = (name: string) => `Cifras de ${name}`
    expect(drawn(() => createElement(NameIn, { say, label: 'Rod' }))).toBe(
      'Cifras de <span lang="en">Rod</span>',
    )
    expect(drawn(() => createElement(NameIn, { say, label: 'Sieve', labels }))).toBe('Cifras de Tamiz')
  })

  test('elsewhere are those of all languages but that of the page', () => {
    const names = () => createElement(NamesElsewhere, { english: ['Sieve'], names: labels })
    const languages = (html: string) => [...html.matchAll(/<span lang="(\w+)"/g)].map(([, tag]) => tag)
    expect(languages(drawn(names, 'en'))).toEqual(['fr', 'es'])
    expect(languages(drawn(names))).toEqual(['en', 'fr'])
    expect(drawn(() => createElement(NamesElsewhere, { english: ['Rod'], names: undefined }))).toBe('')
  })
})

describe('On Spanish pages', () => {
  const { glossary, vocabularies } = content()
  const states = ['joint-states', 'unit-states', 'damp-states'].flatMap((id) => [
    ...(vocabularies.get(id)?.values() ?? []),
  ])
  const methods = [...(vocabularies.get('methods')?.values() ?? [])]
  const terms = [...glossary.values()]

  test.each([
    ['the states of the scales', () => createElement(Scales), states],
    [
      'the states to choose in a form',
      () =>
        createElement(
          'form',
          null,
          ...['joint-states', 'unit-states', 'damp-states'].map((vocabulary) => {
            const options = [...(vocabularies.get(vocabulary)?.keys() ?? [])]
            return createElement(Scale, {
              ...{ key: vocabulary, name: vocabulary, label: vocabulary, options, vocabulary },
              chosen: '',
            })
          }),
        ),
      states,
    ],
    ['words that were looked up', () => createElement(Found, { terms, asked: 'cal' }), terms],
    [
      'terms that a search found',
      () =>
        createElement(FoundList, {
          pages: methods.map(({ id, label, definition = '' }) => ({
            ...{ kind: 'vocabulary' as const, id: `methods#${id}`, title: label, summary: definition },
            ...{ entry: false, invented: false, why: [] },
          })),
        }),
      methods,
    ],
  ])('%s are told in Spanish alone', (_, draw, told) => {
    const html = drawn(draw)
    expect(told.length).toBeGreaterThan(7)
    for (const { definition = '', es } of told) {
      expect(html).toContain(escaped(es?.definition ?? 'missing'))
      expect(html).not.toContain(escaped(definition))
    }
  })

  test('a list to choose from by typing offers Spanish names and knows the English ones too', () => {
    const { show, find } = speaking('es', () => pickTerms('units'))
    expect(show('limestone')).toBe('Caliza')
    expect(['caliza', 'Limestone', 'freestone', 'Kalkstein', 'piedra caliza'].map(find)).toEqual([
      'limestone',
      'limestone',
      undefined,
      'limestone',
      'limestone',
    ])
  })
})
