import { db } from './client.ts'

/** How many addresses are asked about at once; of one that many have, the next so many. */
const AT_ONCE = 40

/**
 * An address that no entry has: the words themselves, or with the first number behind them that is free.
 *
 * @param taken whether something beside the entries has it already
 */
export async function freeSlug(words: string, taken: (slug: string) => boolean): Promise<string> {
  for (let from = 1; ; from += AT_ONCE) {
    const asked = Array.from({ length: AT_ONCE }, (_, i) =>
      from + i === 1 ? words : `${words}-${from + i}`,
    ).filter((slug) => !taken(slug))
    const entries = await db().entry.findMany({ where: { slug: { in: asked } }, select: { slug: true } })
    const known = new Set(entries.map(({ slug }) => slug))
    const free = asked.find((slug) => !known.has(slug))
    if (free !== undefined) return free
  }
}
