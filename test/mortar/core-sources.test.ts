import { existsSync, readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { locatorFault } from '#lib/content/locator.ts'
import { CAUTION_IDS } from '#lib/mortar/cautions.ts'
import { SOURCES } from '#lib/mortar/constants.ts'
import { METHODS } from '#lib/mortar/job-types.ts'
import { comparePractice } from '#lib/mortar/practice.ts'
import { orderSteps } from '#lib/mortar/sequence.ts'
import { WORK_KINDS, workFields } from '#lib/mortar/takeoff.ts'
import { HANDBOOK_YIELDS } from '#lib/mortar/yield.ts'
import { compareYields } from '#lib/mortar/yield-tables.ts'
import { value } from './check.ts'
import { cement, known, RANGED_LIME, RANGED_SAND } from './core-fixtures.ts'

const content = (path: string) => new URL(`../../content/${path}`, import.meta.url)

const cited = [
  ...Object.values(SOURCES),
  ...HANDBOOK_YIELDS.map(({ source }) => source),
  ...value(compareYields({ lime: RANGED_LIME, sand: RANGED_SAND, cement: cement(1440) })).map(
    ({ source }) => source,
  ),
  ...value(comparePractice(RANGED_LIME, { ...RANGED_SAND, ...known({ voids: 0.38 }) })).map(
    ({ source }) => source,
  ),
  ...WORK_KINDS.flatMap((kind) => Object.values(workFields(kind)).map(({ usual }) => usual?.source)),
  ...METHODS.flatMap((method) =>
    orderSteps({ method, limes: ['lump-quicklime'], fibre: true, setting: [], fineWork: true }).map(
      ({ source }) => source,
    ),
  ),
].filter((source) => source !== undefined)

describe('what the sums cite is in content', () => {
  test.each([...new Set(cited)])('%s', (source) => {
    const [id = '', ...locator] = source.split(', ')
    const item = JSON.parse(readFileSync(content(`sources/${id}.json`), 'utf8')) as { type: string }
    expect(locatorFault(item.type, locator.join(', '))).toBeUndefined()
  })

  test.each(CAUTION_IDS)('the caution %s', (id) => {
    expect(existsSync(content(`cautions/${id}.md`))).toBe(true)
  })
})
