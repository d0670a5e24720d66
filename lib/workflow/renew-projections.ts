import { db } from '#lib/db/client.ts'
import { PROJECTIONS } from '#lib/db/projection/refresh.ts'
import { rebuild } from './rebuild.ts'

/**
 * Makes the projections again where another version of the program wrote them: after a migration that gave them
 * new columns, lists and searches would miss what was published before.
 *
 * @returns whether they were made again
 */
export async function renewProjections(): Promise<boolean> {
  const state = await db().projectionState.findUnique({ where: { id: 1 } })
  if (state?.version === PROJECTIONS) return false
  await rebuild()
  return true
}
