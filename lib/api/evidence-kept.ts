import { latestChange } from '#lib/db/search/read.ts'

/** So many answers are kept, some ten kilobytes each. */
const KEPT = 200

/** Next loads modules again for pages and routes; the global keeps the one store. */
const store = globalThis as { putlogAnswers?: Map<string, Promise<unknown>> }
const answers = () => {
  store.putlogAnswers ??= new Map()
  return store.putlogAnswers
}

/**
 * An answer that stays the same until something is published: worked out once for each question and change of the
 * record, for all who ask for it meanwhile too.
 *
 * @param question tells everything that the answer depends on beside the record
 */
export async function keptAnswer<T>(question: unknown, work: () => Promise<T>): Promise<T> {
  const key = `${await latestChange()} ${JSON.stringify(question)}`
  const kept = answers()
  const known = kept.get(key) as Promise<T> | undefined
  const answer = known ?? work()
  // Put last, so that those asked for longest ago go first.
  kept.delete(key)
  kept.set(key, answer)
  if (known === undefined) answer.catch(() => kept.delete(key))
  for (const oldest of kept.keys()) {
    if (kept.size <= KEPT) break
    kept.delete(oldest)
  }
  return answer
}

/** Forgets all answers: for those who measure how long they take. */
export const forgetAnswers = (): void => answers().clear()
