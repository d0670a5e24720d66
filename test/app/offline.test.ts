import { describe, expect, it } from 'vitest'
import { GUEST } from '#lib/access/actor.ts'
import {
  blankInstead,
  blankOf,
  blanksFor,
  copyOf,
  entryOf,
  filesOf,
  headersOfCopy,
  isOfDraft,
  photosOf,
  stepsOf,
  titleOf,
} from '../../app/_offline/copy.ts'
import {
  isOpenedStore,
  readerOf,
  staleFileStores,
  storeOf,
  storesOfOthers,
} from '../../app/_offline/heads.ts'
import { neverKept, sentencesOf, withdrawnSince, withNote } from '../../app/_offline/note.ts'

const SITE = 'https://site.test'
const DRAFT = '/write/01890000-0000-7000-8000-000000000001'
const kept = (at: string, html = '<title>Hot lime · Putlog</title>') =>
  headersOfCopy(new Headers({ 'Content-Encoding': 'gzip', 'X-Kept': 'yes' }), html, new Date(at), 'a1')

describe('the stores of a browser', () => {
  it('are one for all guests, and one for each member', () => {
    expect(readerOf(GUEST)).toBe('guest')
    expect(readerOf({ kind: 'member', key: 'mason-1', roles: [] } as never)).toBe('mason-1')
    expect(storeOf.pages('mason-1')).not.toBe(storeOf.pages('guest'))
  })

  it('of others are pages and photos of anybody but the reader and guests', () => {
    const kinds = [storeOf.pages, storeOf.blanks, storeOf.photos]
    const names = ['guest', 'mason-1', 'mason-10'].flatMap((who) => kinds.map((kind) => kind(who)))
    const all = [...names, storeOf.files('a1'), 'putlog-reader']
    expect(storesOfOthers(all, 'mason-1')).toEqual(kinds.map((kind) => kind('mason-10')))
    expect(storesOfOthers(all, 'guest')).toEqual(names.slice(3))
  })

  it('of what was opened are pages, blank forms and photos, whoever read them', () => {
    const kinds = [storeOf.pages, storeOf.blanks, storeOf.photos]
    const opened = ['guest', 'mason-1'].flatMap((who) => kinds.map((kind) => kind(who)))
    expect([...opened, storeOf.files('a1'), 'putlog-reader'].filter(isOpenedStore)).toEqual(opened)
  })

  it('of a build go when no kept page is of it', () => {
    const names = [storeOf.files('a1'), storeOf.files('b2'), storeOf.files('c3'), storeOf.pages('guest')]
    expect(staleFileStores(names, new Set(['c3', 'a1']))).toEqual([storeOf.files('b2')])
  })
})

describe('copyOf(headers, now)', () => {
  it('tells title and age, and keeps the other headers but those of the line', () => {
    const headers = kept('2026-05-01T10:00:00Z')
    expect([headers.get('X-Kept'), headers.get('Content-Encoding')]).toEqual(['yes', null])
    expect(copyOf(headers, new Date('2026-05-02T10:00:00Z'))).toEqual({
      title: 'Hot lime',
      keptAt: new Date('2026-05-01T10:00:00Z'),
      old: false,
      withdrawn: false,
    })
  })

  it.each([
    ['2026-05-31T10:00:00Z', false],
    ['2026-05-31T10:00:01Z', true],
  ])('of 1 May, 10 o’clock, at %s: old is %s', (now, old) => {
    expect(copyOf(kept('2026-05-01T10:00:00Z'), new Date(now)).old).toBe(old)
  })
})

describe('what a page is drawn with', () => {
  it('is every file of the build that it names, once', () => {
    const html = `<link href="/_next/static/chunks/a1.css"/><script src="/_next/static/chunks/%5Bb%5D.js"></script>
      <script>self.__next_f.push([1,"\\"/_next/static/chunks/late.js\\",\\"/_next/static/chunks/a1.css\\""])</script>`
    expect(filesOf(html)).toEqual([
      '/_next/static/chunks/a1.css',
      '/_next/static/chunks/%5Bb%5D.js',
      '/_next/static/chunks/late.js',
    ])
  })

  it('is each photo in the width that a screen needs, or the widest there is', () => {
    const set = (sha: string, widths: number[]) =>
      widths.map((width) => `/photos/${sha.repeat(64)}/${width}.webp ${width}w`).join(', ')
    const html = `<source srcSet="${set('a', [320, 768, 1280])}"/><source srcSet="${set('b', [320, 480])}"/>`
    expect(photosOf(html)).toEqual([
      `/photos/${'a'.repeat(64)}/768.webp`,
      `/photos/${'b'.repeat(64)}/480.webp`,
    ])
  })
})

it.each([
  ['Lime &amp; sand · Putlog', 'Lime & sand'],
  ['Mason&#x27;s putty · 1 : 3 · Putlog', "Mason's putty · 1 : 3"],
  ['Putlog', 'Putlog'],
])('titleOf a page called %s is %s', (title, told) => {
  expect(titleOf(`<head><title>${title}</title></head>`)).toBe(told)
})

it.each([
  ['/recipes/hot-lime', 'hot-lime'],
  ['/recipes/hot-lime/job?area=3', 'hot-lime'],
  ['/cases/barn/photos', 'barn'],
  ['/es/recipes/hot-lime/job', 'hot-lime'],
  ['/es/write/blank?of=barn&key=1', 'barn'],
  ['/write/blank?kind=case', null],
  ['/recipes', null],
  ['/tables/vitruvius-mortar', null],
  [`${DRAFT}/place`, null],
])('entryOf %s is %s', (path, slug) => {
  expect(entryOf(SITE + path)).toBe(slug)
})

it.each([
  [`${DRAFT}/place`, true],
  [`/es${DRAFT}/place`, true],
  ['/write', false],
  ['/write/new?kind=case', false],
  ['/write/blank?kind=case', false],
  ['/recipes/write', false],
])('isOfDraft %s is %s', (path, is) => {
  expect(isOfDraft(SITE + path)).toBe(is)
})

it.each([
  ['/write/new?of=barn', '/write/blank?of=barn'],
  ['/write/new?kind=visit&of=barn&work=pointing', '/write/blank?of=barn'],
  ['/es/write/blank?of=barn&key=01890000-0000-7000-8000-000000000001', '/es/write/blank?of=barn'],
  ['/write/blank?kind=case', '/write/blank?kind=case'],
  ['/write/blank?from=barn%402&key=1', '/write/blank?from=barn%402'],
  ['/write/new?late=01890000-0000-7000-8000-000000000001', undefined],
  ['/write/new', undefined],
  ['/cases/barn?of=barn', undefined],
  [`${DRAFT}/place`, undefined],
])('blankOf %s is %s', (path, blank) => {
  expect(blankOf(SITE + path)).toBe(blank && SITE + blank)
})

it.each([
  ['/write/new?of=barn', '/write/blank?of=barn'],
  ['/es/write/new?kind=visit&of=barn&work=pointing', '/es/write/blank?of=barn&work=pointing'],
  ['/write/blank?of=barn&work=pointing', undefined],
  ['/cases/barn', undefined],
])('blankInstead of %s is %s', (path, blank) => {
  expect(blankInstead(SITE + path)).toBe(blank && SITE + blank)
})

it('blanksFor a page are those of a new case and of a visit to each case that it leads to, in its language', () => {
  const html = '<a href="/es/write/new?of=barn"></a><a href="/es/write/new?from=barn"></a>'
  expect(blanksFor(html, `${SITE}/es/cases/barn`)).toEqual([
    `${SITE}/es/write/blank?kind=case`,
    `${SITE}/es/write/blank?of=barn`,
  ])
  expect(blanksFor('', `${SITE}/tables`)).toEqual([`${SITE}/write/blank?kind=case`])
})

it('stepsOf a draft are its other steps, and of another page none', () => {
  const links = ['place', 'work', 'both', 'merge'].map((step) => `<a href="${DRAFT}/${step}">`).join('')
  const html = `${links}<a href="/write/01890000-0000-7000-8000-000000000002/work"><a href="${DRAFT}">`
  expect(stepsOf(html, `${SITE}${DRAFT}/place?look=mend`)).toEqual([`${DRAFT}/work`])
  expect(stepsOf(html, `${SITE}/recipes`)).toEqual([])
})

describe('the note over a copy', () => {
  const copy = { title: '', keptAt: new Date('2026-05-01T10:00:00Z'), old: false, withdrawn: false }

  it('says from when the copy is, that there is no signal, and what else must be known', () => {
    const page = { keep: 'page', away: false }
    expect(sentencesOf(copy, page, 'en-GB')).toEqual([
      expect.stringMatching(/^Kept copy from 1 May 2026.*; no signal\.$/),
    ])
    expect(sentencesOf({ ...copy, old: true }, page, 'en-GB')[0]).toContain('may be out of date')
    expect(sentencesOf({ ...copy, withdrawn: true }, page, 'en-GB')[0]).toBe(withdrawnSince('en'))
    expect(sentencesOf(copy, { ...page, keep: 'draft' }, 'en-GB')[1]).toContain('kept in this browser')
    expect(sentencesOf(copy, { ...page, keep: 'blank' }, 'en-GB')[1]).toContain('becomes a draft of yours')
    expect(sentencesOf(copy, { ...page, away: true }, 'en-GB')).toEqual([
      expect.stringMatching(/^Kept copy from 1 May 2026.*; the site cannot answer just now\.$/),
    ])
  })

  it('stands in the body before the main part, once, with what it says as text', () => {
    const html =
      '<html lang="en-GB"><body><header></header><main id="main"><p>&lt;main></p></main></body></html>'
    const noted = withNote(html, 'kept', ['a < b & "c" $&'])
    expect(noted).toMatch(/<\/header><aside [^>]*id="kept-copy".*<\/aside><main id="main">/)
    expect(noted).toContain('<p>a &#60; b &#38; &#34;c&#34; $&#38;</p>')
    expect(noted.match(/<aside/g)).toHaveLength(1)
    expect(withNote(html, 'never', neverKept('xx'))).toContain('No signal')
  })
})
