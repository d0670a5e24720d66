import { readdirSync, readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import { words } from '../../app/_words/index.ts'

const root = new URL('../..', import.meta.url).pathname
const read = (path: string) => readFileSync(`${root}/${path}`, 'utf8')
const filesIn = (folder: string, ending: RegExp) =>
  readdirSync(`${root}/${folder}`, { recursive: true, encoding: 'utf8' })
    .filter((path) => ending.test(path))
    .map((path) => `${folder}/${path}`)
const catalogue = filesIn('app/_words/en', /\.json$/).map((path) => {
  const namespace = path.slice('app/_words/en/'.length, -'.json'.length)
  const messages = JSON.parse(read(path)) as Record<string, unknown>
  const [, page] = /^work-out-(.+)$/.exec(namespace) ?? []
  if (page === undefined) return { namespace, messages }
  // Words of one calculation stand under its name; title and lead are asked for by the frame.
  const { title: _, lead: __, ...own } = messages
  return {
    namespace,
    messages: { [page.replace(/-(\w)/g, (_, letter: string) => letter.toUpperCase())]: own },
  }
})
const sources = [...filesIn('app', /\.tsx?$/), ...filesIn('lib', /\.ts$/), 'proxy.ts'].map(read)

function keysOf(messages: unknown, prefix = ''): string[] {
  if (typeof messages === 'string') return [prefix]
  return Object.entries(messages as object).flatMap(([key, value]) =>
    keysOf(value, prefix === '' ? key : `${prefix}.${key}`),
  )
}

/** Every quoted or templated piece of the sources that could be a key; a hole stands for any names. */
const patterns = sources.flatMap((text) =>
  [...text.matchAll(/'([a-zA-Z][\w.-]*)'|`([a-zA-Z][\w.-]*\.(?:[\w.-]|\$\{[^}]*\})*)`/g)].map(
    ([, plain, template]) => plain ?? template ?? '',
  ),
)
const literal = new Set(patterns.filter((pattern) => !pattern.includes('${')))
const templated = [...new Set(patterns.filter((pattern) => pattern.includes('${')))].map(
  (pattern) =>
    new RegExp(`^${pattern.replace(/\.|\$\{[^}]*\}/g, (part) => (part === '.' ? '\\.' : '[\\w.-]+'))}$`),
)

/** Words that are read from their file as a whole, each by the one place that names it. */
const READ_WHOLE = new Set(['error', 'offline-note', 'refused', 'steps', 'steps-analysis'])

test.each(catalogue.filter(({ namespace }) => !READ_WHOLE.has(namespace)))(
  'words of $namespace are all used',
  ({ messages }) => {
    const unused = keysOf(messages).filter(
      (key) => !literal.has(key) && !templated.some((pattern) => pattern.test(key)),
    )
    expect(unused).toEqual([])
  },
)

test('words(namespace) answers with the sentence and puts its values in', () => {
  expect(words('common')('year.before', { year: '25' })).toBe('25 BC')
})

test('words(namespace) throws for a key that does not exist rather than showing the key', () => {
  const t = words('common') as unknown as (key: string) => string
  expect(() => t('no.such.key')).toThrow()
})

test('no page holds a bare sentence: every visible text of a .tsx file comes from the catalogue', () => {
  const bare = filesIn('app', /\.tsx$/).flatMap((path) =>
    [...read(path).matchAll(/(?<!=)>\s*([A-Za-z][A-Za-z’',. ]{2,})\s*</g)]
      .map(([, text = '']) => text.trim())
      .filter((text) => !text.includes('=>') && !/\w\.\w/.test(text) && text !== 'return')
      .map((text) => `${path}: ${text}`),
  )
  expect(bare).toEqual([])
})
