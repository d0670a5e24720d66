import { execFileSync } from 'node:child_process'
import { readdirSync, readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { speaking } from '#app/asked.ts'
import { readAmount } from '../../app/_http/form.ts'
import { refusalSentence } from '../../app/_http/refusal-sentence.ts'
import { formatDate, formatNumber, formatWorking } from '../../app/_words/format.ts'
import { words } from '../../app/_words/index.ts'
import { inLanguage, splitLanguage, switched } from '../../app/_words/language.ts'

import { readDate } from '../../app/_write/read-date.ts'

const root = new URL('../..', import.meta.url).pathname
const folder = (language: string) => `app/_words/${language}`
const files = readdirSync(`${root}/${folder('en')}`).sort()

/** Every sentence of a file by its key. */
function sentencesIn(language: string, file: string): ReadonlyMap<string, string> {
  const found = new Map<string, string>()
  const walk = (part: unknown, path: string): void => {
    if (typeof part === 'string') found.set(path, part)
    else
      for (const [key, below] of Object.entries(part as object))
        walk(below, path === '' ? key : `${path}.${key}`)
  }
  walk(JSON.parse(readFileSync(`${root}/${folder(language)}/${file}`, 'utf8')), '')
  return found
}

/** What a sentence is given: `{name}` and `{name, plural, …}`, but not the braces of a branch. */
const argumentsOf = (text: string) =>
  [
    ...new Set(
      [...text.matchAll(/(?<!(?:=\d+|\b(?:zero|one|two|few|many|other|none)) )\{(\w+)\s*[,}]/g)].map(
        ([, name]) => name,
      ),
    ),
  ].sort()
const tagsOf = (text: string) => [...text.matchAll(/<\/?\w+>/g)].map(([tag]) => tag).sort()

/** Words that are the same in both: names, signs of units, and a few of the trade. */
const SAME: Readonly<Record<string, readonly string[]>> = {
  'common.json': [
    'site.name',
    'site.titleTemplate',
    'citation.volume',
    'citation.page',
    'citation.pages',
    'citation.isbn',
    'citation.doi',
  ],
  'evidence.json': ['compare.p'],
  'find.json': ['kindOne.material', 'list.json'],
  'pages.json': ['recipe.material'],
  'review.json': ['value.no', 'cite.form.bibtex', 'cite.form.ris', 'cite.form.csl-json', 'mail.subject'],
  'work-out-hydraulicity.json': ['fields.mgo'],
  'work-out-lime-certificate.json': ['items.mgo', 'items.co2', 'items.so3'],
  'work-out.json': ['result.json'],
  'write.json': ['label.doi', 'label.isbn', 'step.material.title', 'no'],
}
const FORMULA = /\.formula$/
const UNIT = /^(?:units|readingUnit)\./
/** Nothing but holes, figures and signs between them. */
const isWordless = (text: string) => !/\p{L}{2}/u.test(text.replaceAll(/\{[^{}]*\}/g, ''))

test('Spanish has a file for each file of English, and no other', () => {
  expect(readdirSync(`${root}/${folder('es')}`).sort()).toEqual(files)
})

describe.each(files)('%s in Spanish', (file) => {
  const english = sentencesIn('en', file)
  const spanish = sentencesIn('es', file)

  test('has each sentence of the English file, and no other', () => {
    const missing = [...english.keys()].filter((key) => !spanish.has(key))
    const left = [...spanish.keys()].filter((key) => !english.has(key))
    const told = [
      ...missing.map((key) => `put into ${folder('es')}/${file}: ${key}, in English “${english.get(key)}”`),
      ...left.map((key) => `take out of ${folder('es')}/${file}: ${key}, which English no longer has`),
    ]
    expect(told).toEqual([])
  })

  test('has the holes and the tags of the English sentences', () => {
    const differ = [...english].flatMap(([key, text]) => {
      const other = spanish.get(key) ?? text
      const same =
        argumentsOf(other).join() === argumentsOf(text).join() && tagsOf(other).join() === tagsOf(text).join()
      return same ? [] : [`${folder('es')}/${file}: ${key}: “${other}” for “${text}”`]
    })
    expect(differ).toEqual([])
  })

  test('leaves no sentence in English', () => {
    const left = [...english].flatMap(([key, text]) =>
      spanish.get(key) !== text ||
      isWordless(text) ||
      UNIT.test(key) ||
      FORMULA.test(key) ||
      SAME[file]?.includes(key)
        ? []
        : [`translate in ${folder('es')}/${file}: ${key}, “${text}” (or name it in SAME of this test)`],
    )
    expect(left).toEqual([])
  })
})

describe('words(namespace, language)', () => {
  test('speaks English where no request says otherwise, and Spanish where it is asked to', () => {
    expect(words('common')('year.before', { year: '25' })).toBe('25 BC')
    expect(words('common', 'es')('year.before', { year: '25' })).toBe('25 a. C.')
  })

  test('calls lime by the names of the glossary', () => {
    const glossary = readFileSync(`${root}/content/glossary/lime.yaml`, 'utf8')
    for (const name of ['cal viva en terrón', 'cal apagada en polvo', 'cal en pasta']) {
      expect(glossary).toMatch(new RegExp(`es: \\[?"${name}"`))
      expect(words('pages', 'es')('method.statesText')).toContain(name)
    }
  })
})

describe('refusals', () => {
  const known = sentencesIn('en', 'refused.json')
  /** Told to whoever runs the site, or to programs alone; or made of names that only reviewers read. */
  const NOT_TOLD = /^(?:This revision is |There is nothing to |\$\{open)/
  const told = execFileSync('git', ['ls-files', 'lib'], { cwd: root, encoding: 'utf8' })
    .split('\n')
    .filter((path) => path.endsWith('.ts'))
    .flatMap((path) =>
      [
        ...readFileSync(`${root}/${path}`, 'utf8').matchAll(
          /new Refusal\(\s*'[\w-]+',\s*(?:'([^']+)'|`([^`]+)`)/g,
        ),
      ].map(([, plain, holed]) => ({ path, sentence: plain ?? holed ?? '' })),
    )
    .filter(({ sentence }) => !NOT_TOLD.test(sentence))

  test('have their sentence in the catalogue, so that it can be said in Spanish', () => {
    const bare = (text: string) => text.replaceAll(/\$?\{[^}]*\}(?: (?:minutes|hours))?/g, '{}')
    const all = new Set([...known.values()].map(bare))
    const missing = told.flatMap(({ path, sentence }) =>
      all.has(bare(sentence))
        ? []
        : [
            `put into ${folder('en')}/refused.json and ${folder('es')}/refused.json: “${sentence}”, of ${path}`,
          ],
    )
    expect(told.length).toBeGreaterThan(60)
    expect(missing).toEqual([])
  })

  test('are said in Spanish on a Spanish page, with what stands in them', () => {
    const inSpanish = (message: string) => speaking('es', () => refusalSentence(message))
    expect(inSpanish('Too many tries. Wait 15 minutes and try again.')).toBe(
      'Demasiados intentos. Esperar 15 minutos y probar de nuevo.',
    )
    expect(inSpanish('Nobody foresaw this.')).toBe('Nobody foresaw this.')
    expect(refusalSentence('That address is taken.')).toBe('That address is taken.')
  })
})

describe('numbers and dates', () => {
  test('are written and read in the way of the language', () => {
    expect([formatNumber(1234.5, 1), formatDate('2019-06-12')]).toEqual(['1234.5', '12 June 2019'])
    speaking('es', () => {
      expect([formatNumber(12345.5, 1), formatDate('2019-06-12')]).toEqual([
        '12.345,5',
        '12 de junio de 2019',
      ])
      expect(formatWorking('12.5 · 0.05 = 0.625')).toBe('12,5 · 0,05 = 0,625')
      expect(readDate('12 de junio de 2019')).toBe('2019-06-12')
      expect(['24/03/2025', '12/31/2024', '03/04/2025'].map(readDate)).toEqual([
        '2025-03-24',
        '2024-12-31',
        '03/04/2025',
      ])
      expect(readAmount({ a: '1,500' }, 'a').amount?.typical).toBe(1.5)
      expect(readAmount({ a: '1.500' }, 'a').readings).toMatchObject({
        thousands: { typical: 1500 },
        decimal: { typical: 1.5 },
      })
      // Answered in English before: the answer stands, whatever the mark would be taken for here.
      expect(readAmount({ a: '1,500', 'a-mark': 'thousands' }, 'a').amount?.typical).toBe(1500)
      expect(readAmount({ a: '1,500', 'a-mark': 'decimal' }, 'a').amount?.typical).toBe(1.5)
      expect(readAmount({ a: '20 a 30' }, 'a').amount).toMatchObject({ low: 20, high: 30 })
    })
  })
})

describe('addresses', () => {
  test.each([
    ['/', '/es'],
    ['/recipes?unit=granite#main', '/es/recipes?unit=granite#main'],
    ['/?a=1', '/es?a=1'],
    ['/estonia', '/es/estonia'],
    ['/es/recipes', '/es/recipes'],
    ['/es', '/es'],
    ['/api/v1/cases', '/api/v1/cases'],
    ['/photos/add?back=%2F', '/photos/add?back=%2F'],
    ['/photos', '/es/photos'],
    ['https://place.example/x', 'https://place.example/x'],
    ['//place.example/x', '//place.example/x'],
    ['#result', '#result'],
    ['?show=all', '?show=all'],
    ['', ''],
  ])('inLanguage(%j) is %j in Spanish', (address, spanish) => {
    expect(inLanguage(address, 'es')).toBe(spanish)
    expect(inLanguage(address, 'en')).toBe(address)
  })

  test.each([
    ['/es', 'es', '/'],
    ['/es/recipes/a', 'es', '/recipes/a'],
    ['/ES/recipes/A', 'es', '/recipes/A'],
    ['/recipes', 'en', '/recipes'],
    ['/', 'en', '/'],
    ['/en/recipes', 'en', '/en/recipes'],
    ['/es/api/v1/cases', 'en', '/es/api/v1/cases'],
    ['/es//place.example', 'en', '/es//place.example'],
  ])('splitLanguage(%j) is %s and %j', (path, language, bare) => {
    expect(splitLanguage(path)).toEqual({ language, path: bare })
  })

  test('switched() leads to and fro with the query and the place in the page', () => {
    expect(switched('/recipes/a/job?x=1,5#sheet', 'es')).toBe('/es/recipes/a/job?x=1,5#sheet')
    expect(switched('/es/recipes/a/job?x=1,5#sheet', 'en')).toBe('/recipes/a/job?x=1,5#sheet')
    expect(switched('/es', 'en')).toBe('/')
    expect(switched('/work-out/sand?a=1&is=4f00&ed=2#result', 'es')).toBe('/es/work-out/sand?a=1&ed=2#result')
  })

  test.each([
    ['en', 'es', '1,500', 'thousands', 1500],
    ['en', 'es', '1,500', 'decimal', 1.5],
    ['en', 'es', '12,500–20,000', 'thousands', 16250],
    ['es', 'en', '1.500', 'thousands', 1500],
    ['es', 'en', '1.500', 'decimal', 1.5],
  ] as const)('switched() from %s to %s keeps what %s means as %s', (from, to, text, mark, value) => {
    const typed = { area: text, 'area-mark': mark }
    const before = speaking(from, () => readAmount(typed, 'area'))
    const address = switched(inLanguage(`/recipes/a/job?${new URLSearchParams(typed)}`, from), to)
    const led = Object.fromEntries(new URL(address, 'https://site.test').searchParams)
    const after = speaking(to, () => readAmount(led, 'area'))
    expect(before.amount?.typical).toBe(value)
    expect(after.amount).toEqual(before.amount)
  })

  test('switched() leaves no choice behind that was made of another figure', () => {
    expect(switched('/work-out/sand?area=2.125&area-mark=thousands', 'es')).toBe(
      '/es/work-out/sand?area=2.125',
    )
    expect(switched('/work-out/sand?area=1,500&area-mark=thousands', 'en')).toBe(
      '/work-out/sand?area=1,500&area-mark=thousands',
    )
  })
})
