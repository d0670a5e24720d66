import { printFault } from '#lib/content/fault.ts'
import { findGaps } from '#lib/content/gaps.ts'
import { loadContent } from '#lib/content/load.ts'
import { say } from './say.ts'

/** `npm run content`: checks all content. Code 1 when anything is wrong; else tells what is missing. */
export async function run(args: readonly string[]): Promise<number> {
  const outcome = loadContent(args[0] ?? 'content')
  if (!outcome.ok) {
    for (const fault of outcome.faults) say(printFault(fault))
    say(`The content has ${outcome.faults.length} fault(s).`)
    return 1
  }
  const { content } = outcome
  say(
    `Edition ${content.edition}: ${content.tables.size} tables with ${content.rows.size} rows, ` +
      `${content.sources.size} sources, ${content.materials.size} materials, ` +
      `${content.vocabularies.size} vocabularies, ${content.cautions.size} cautions, ` +
      `${content.glossary.size} glossary terms, ${content.guides.size} guides. Nothing is wrong.`,
  )
  for (const [kind, names] of Object.entries(findGaps(content))) {
    say(`${names.length} ${kind}${names.length > 0 ? `: ${names.join(', ')}` : ''}`)
  }
  return 0
}
