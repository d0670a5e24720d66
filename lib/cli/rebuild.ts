import { rebuild } from '#lib/workflow/rebuild.ts'
import { withDatabase } from './database.ts'
import { say } from './say.ts'

/** `npm run rebuild`: makes what lists, filters and counts read again from the revisions. */
export function run(): Promise<number> {
  return withDatabase(async () => {
    const { recipes, cases, visits } = await rebuild()
    say(`Rebuilt: recipes ${recipes}, cases ${cases}, visits ${visits}.`)
    return 0
  })
}
