import { z } from 'zod'
import type { CaseFilter } from '#lib/db/case-filter.ts'
import { CASE_FACETS, type CaseFacet } from '#lib/entry/facets.ts'
import { Refusal } from '#lib/errors.ts'
import { END_POINTS } from '#lib/evidence/index.ts'
import { caseFilterOf, caseFilterQuery } from '#lib/search/case-query.ts'
import { LONGEST_TEXT } from '#lib/search/index.ts'
import { evidenceAnswer } from './evidence-answer.ts'
import { readBehind } from './evidence-behind.ts'
import { compareGroups } from './evidence-compare.ts'
import { choosesByOutcome, readEvidence, scopeOf } from './evidence-read.ts'
import { writeBehind, writeComparison, writeEvidence } from './evidence-write.ts'
import { operation } from './operation.ts'

const values = z.array(z.string().min(1).max(160)).max(40)
const years = z.int().min(0).max(200)
/** As many cases come with the figures; the rest are a list of their own. */
const FIRST_CASES = 100

/** Cases as the filter of lists has them: of each facet any of the values, all facets together. */
const filterBody = z.strictObject({
  ...(Object.fromEntries(CASE_FACETS.map((facet) => [facet, values.optional()])) as Record<
    CaseFacet,
    z.ZodOptional<typeof values>
  >),
  minYears: years.optional(),
  maxYears: years.optional(),
})

/** What the record shows about the walls of a filter, with as many as two others beside them. */
export const evidenceOperation = operation({
  id: 'readEvidence',
  method: 'POST',
  path: '/api/v1/evidence',
  summary:
    'What visits saw of the walls that a filter finds: sizes, states, curves with bands, what was left out, the cases and laboratory results behind them; and a comparison with other filters',
  body: z.strictObject({
    filter: filterBody.default({}),
    /** Words that the cases of the filter are found by, as in the list of cases. */
    text: z.string().trim().max(LONGEST_TEXT).default(''),
    endPoints: z
      .array(z.enum(END_POINTS))
      .min(1)
      .max(END_POINTS.length)
      .default([...END_POINTS]),
    /** Filters of one or two further groups to set beside the first. */
    compareWith: z.array(filterBody).min(1).max(2).optional(),
  }),
  answer: evidenceAnswer,
  async run({ body: { filter, text, endPoints, compareWith = [] } }) {
    const scope = scopeOf(sound(filter, 'filter'), text)
    const others = compareWith.map((other, k) => ({
      key: String(k + 1),
      scope: scopeOf(sound(other, `compareWith.${k}`)),
    }))
    const ends = [...new Set(endPoints)]
    const [evidence, behind] = await Promise.all([readEvidence(scope, ends), readBehind(scope, FIRST_CASES)])
    const query = caseFilterQuery(scope.filter)
    if (text !== '') query.set('q', text)
    const list = `/api/v1/find/cases.json?${query}`
    const comparisons = []
    for (const endPoint of others.length === 0 ? [] : ends)
      comparisons.push(
        writeComparison(endPoint, await compareGroups([{ key: '0', scope }, ...others], endPoint)),
      )
    const chosenByOutcome = choosesByOutcome(scope.filter, text)
    return {
      asOf: scope.asOf,
      chosenByOutcome,
      ...writeEvidence(evidence),
      ...writeBehind(behind, list),
      comparisons,
    }
  },
})

/** @throws Refusal naming each value that no filter knows */
function sound(given: z.infer<typeof filterBody>, path: string): CaseFilter {
  const asked = Object.fromEntries(Object.entries(given).filter(([, value]) => value !== undefined))
  const { filter, faults } = caseFilterOf(caseFilterQuery(asked as CaseFilter))
  if (faults.length === 0) return filter
  throw new Refusal(
    'invalid',
    'Some values of the filter are not known.',
    faults.map((fault) => ({ ...fault, field: `${path}.${fault.field}` })),
  )
}
