import { z } from 'zod'
import { caseOperation, casesOperation } from './cases.ts'
import { evidenceOperation } from './evidence.ts'
import { findOperation, likeOperation, regionsOperation, suggestOperation } from './find.ts'
import { healthOperation } from './health.ts'
import { jobOperation } from './job.ts'
import { describeApi } from './openapi.ts'
import { type Operation, operation } from './operation.ts'
import { recipeOperation, recipesOperation } from './recipes.ts'
import { standingOperation } from './standing.ts'
import { sumOperations } from './sums/index.ts'
import { tablesOperation } from './tables.ts'
import { compareOperation, versionOperation, versionsOperation } from './versions.ts'

/** The description of the whole interface. */
export const openapiOperation = operation({
  id: 'readDescription',
  method: 'GET',
  path: '/api/v1/openapi.json',
  summary: 'This description (OpenAPI 3.1)',
  answer: z.looseObject({ openapi: z.literal('3.1.0'), paths: z.record(z.string(), z.unknown()) }),
  run: async () => description() as { openapi: '3.1.0'; paths: Record<string, unknown> },
})

/** Everything the JSON interface does. */
export const operations: readonly Operation[] = [
  recipesOperation,
  recipeOperation,
  casesOperation,
  caseOperation,
  findOperation,
  suggestOperation,
  likeOperation,
  regionsOperation,
  evidenceOperation,
  tablesOperation,
  versionsOperation,
  versionOperation,
  compareOperation,
  standingOperation,
  jobOperation,
  ...sumOperations,
  openapiOperation,
  healthOperation,
] as readonly Operation[]

let made: ReturnType<typeof describeApi> | undefined
const description = () => {
  made ??= describeApi(operations)
  return made
}
