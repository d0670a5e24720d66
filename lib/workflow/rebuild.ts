import { db } from '#lib/db/client.ts'
import { refreshAll } from '#lib/db/projection/refresh.ts'

export interface Rebuilt {
  readonly recipes: number
  readonly cases: number
  readonly visits: number
}

/** Makes every projection again from the published revisions, in one transaction: readers see the old or the new. */
export async function rebuild(): Promise<Rebuilt> {
  return db().$transaction(
    async (tx) => {
      await refreshAll(tx)
      const recipes = await tx.recipeIndex.count()
      const cases = await tx.caseIndex.count()
      return { recipes, cases, visits: await tx.visitIndex.count() }
    },
    { timeout: 3_600_000, maxWait: 60_000 },
  )
}
