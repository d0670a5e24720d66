import { execFileSync } from 'node:child_process'
import { readFileSync } from 'node:fs'
import { builtinModules } from 'node:module'
import { dirname, posix } from 'node:path'
import { describe, expect, it } from 'vitest'

/**
 * The floors of the house: what each folder may import of ours, and which packages. Imports point down.
 * `*` stands for any package; `node:` for any of Node's own modules.
 */
const FLOORS: Record<string, { ours: readonly string[]; packages: readonly string[] }> = {
  'lib/mortar': { ours: [], packages: ['d3-array', 'pure-rand', 'ml-fcnnls'] },
  'lib/evidence': { ours: [], packages: ['jstat', 'pure-rand'] },
  'lib/errors.ts': { ours: [], packages: [] },
  'lib/entry': {
    ours: ['lib/mortar', 'lib/errors.ts'],
    packages: ['zod', 'canonicalize', 'uuid', 'stemmer', 'diff', 'node:crypto'],
  },
  'lib/content': {
    ours: ['lib/mortar', 'lib/errors.ts', 'lib/entry'],
    packages: ['zod', 'remark', 'remark-*', 'unified', 'vfile*', 'yaml', 'mdast', 'unist*', 'node:'],
  },
  'lib/access': { ours: ['lib/entry', 'lib/errors.ts'], packages: [] },
  'lib/env.ts': { ours: ['lib/errors.ts'], packages: ['zod', 'node:'] },
  'lib/db': {
    ours: ['lib/entry', 'lib/evidence', 'lib/access', 'lib/errors.ts', 'lib/env.ts', 'prisma'],
    packages: ['@prisma/*', 'pg', 'uuid', 'zod', 'node:'],
  },
  'lib/photos': {
    ours: ['lib/errors.ts', 'lib/env.ts'],
    packages: ['sharp', 'exif-reader', '@aws-sdk/client-s3', 'node:'],
  },
  'lib/search': {
    ours: ['lib/db', 'lib/evidence', 'lib/entry', 'lib/content', 'lib/errors.ts'],
    packages: ['iso-3166-1', 'node:'],
  },
  'lib/workflow': {
    ours: [
      'lib/photos',
      'lib/db',
      'lib/access',
      'lib/content',
      'lib/entry',
      'lib/mortar',
      'lib/errors.ts',
      'prisma',
    ],
    packages: ['uuid', 'yaml', 'zod', 'node:'],
  },
  'lib/mail': { ours: ['lib/errors.ts', 'lib/env.ts'], packages: ['nodemailer'] },
  'lib/auth': {
    ours: ['lib/workflow', 'lib/mail', 'lib/db', 'lib/access', 'lib/entry', 'lib/errors.ts', 'lib/env.ts'],
    packages: ['next-auth', '@node-rs/argon2', '@zxcvbn-ts/language-common', 'zod', 'node:'],
  },
  'lib/api': {
    ours: [
      'lib/workflow',
      'lib/search',
      'lib/db',
      'lib/access',
      'lib/content',
      'lib/evidence',
      'lib/entry',
      'lib/mortar',
      'lib/errors.ts',
    ],
    packages: ['zod', 'node:'],
  },
  // The words of its mail stand in the catalogue, like all words that people read.
  'lib/cli': { ours: ['lib', 'prisma', 'content', 'test', 'app/_words'], packages: ['*'] },
  app: { ours: ['lib', 'app', 'content'], packages: ['*'] },
}

/** The one thing in lib that pages must not touch: they ask the reads, never the client. */
const HIDDEN_FROM_APP = ['lib/db/client.ts', 'prisma']

const files = execFileSync('git', ['ls-files', '-co', '--exclude-standard', 'lib', 'app'], {
  encoding: 'utf8',
})
  .split('\n')
  .filter((file) => /\.(ts|tsx|mjs)$/.test(file))

function importsOf(file: string): string[] {
  const text = readFileSync(file, 'utf8')
  const found = text.matchAll(
    /(?:^|\n)\s*(?:import|export)\s(?:[^'"]*?\sfrom\s)?['"]([^'"]+)['"]|import\(\s*['"]([^'"]+)['"]/g,
  )
  return [...found].map((match) => (match[1] ?? match[2]) as string)
}

/** `#lib/x.ts` and `./x.ts` as a path from the root; a package as it stands. */
function resolve(file: string, name: string): { ours: string } | { package: string } {
  if (name.startsWith('#')) return { ours: name.slice(1) }
  if (name.startsWith('.')) return { ours: posix.join(dirname(file), name) }
  return { package: builtinModules.includes(name) ? `node:${name}` : name }
}

const floorOf = (path: string): string | undefined =>
  Object.keys(FLOORS).find((floor) => path === floor || path.startsWith(`${floor}/`))

const within = (path: string, folder: string) => path === folder || path.startsWith(`${folder}/`)

const packageFits = (name: string, pattern: string) =>
  pattern === '*' ||
  (pattern.endsWith('*') || pattern.endsWith(':')
    ? name.startsWith(pattern.replace('*', ''))
    : name === pattern || name.startsWith(`${pattern}/`))

/** What is wrong with one import, or nothing. */
function breach(file: string, name: string): string | undefined {
  const floor = floorOf(file)
  if (floor === undefined) return `${file}: stands on no floor`
  const rule = FLOORS[floor] as (typeof FLOORS)[string]
  const target = resolve(file, name)
  if ('package' in target) {
    return rule.packages.some((pattern) => packageFits(target.package, pattern))
      ? undefined
      : `${file}: ${floor} may not import the package ${target.package}`
  }
  if (floor === 'app' && HIDDEN_FROM_APP.some((hidden) => within(target.ours, hidden)))
    return `${file}: app may not import ${target.ours}`
  return within(target.ours, floor) || rule.ours.some((folder) => within(target.ours, folder))
    ? undefined
    : `${file}: ${floor} may not import ${target.ours}`
}

describe('floors', () => {
  it('finds the files it is to judge', () => {
    expect(files.length).toBeGreaterThan(50)
  })

  it('holds for every import in lib and app', () => {
    const breaches = files.flatMap((file) => importsOf(file).flatMap((name) => breach(file, name) ?? []))
    expect(breaches).toEqual([])
  })

  it.each([
    ['lib/mortar/lime.ts', '#lib/entry/recipe.ts'],
    ['lib/mortar/lime.ts', 'zod'],
    ['lib/mortar/lime.ts', 'node:fs'],
    ['lib/entry/recipe.ts', '#lib/db/recipes.ts'],
    ['lib/content/load.ts', 'next/headers'],
    ['lib/db/recipes.ts', '#lib/workflow/submit.ts'],
    ['lib/db/recipes.ts', '../content/load.ts'],
    ['app/page.tsx', '#lib/db/client.ts'],
    ['lib/stray.ts', 'zod'],
  ])('refuses %s importing %s', (file, name) => {
    expect(breach(file, name)).toBeTypeOf('string')
  })

  it('gives no file in app a browser script that knows more than the sums and the bodies', () => {
    const allowed = ['lib/mortar', 'lib/entry', 'lib/errors.ts', 'app']
    const breaches = files
      .filter((file) => file.startsWith('app/') && /^['"]use client['"]/.test(readFileSync(file, 'utf8')))
      .flatMap((file) => importsOf(file).map((name) => ({ file, target: resolve(file, name) })))
      .filter(({ target }) => 'ours' in target && !allowed.some((folder) => within(target.ours, folder)))
    expect(breaches).toEqual([])
  })
})
