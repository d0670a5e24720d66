import { existsSync, rmSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { printFault } from '#lib/content/fault.ts'
import { loadContent } from '#lib/content/load.ts'
import { materialFile, sourceFile, type WrittenFile } from '#lib/content/write-out.ts'
import { publishedBySlug } from '#lib/db/published.ts'
import { isSlug } from '#lib/entry/fields.ts'
import { Halt } from '#lib/errors.ts'
import { withDatabase } from './database.ts'
import { say } from './say.ts'

const USAGE = 'Say what: npm run take-in -- source <its address>, or material <its address>'

/**
 * `npm run take-in -- source some-book`: writes a published source or material as a file of content, to be reviewed and
 * committed. From then on the file answers at the address that the entry had; the entry's versions stay.
 */
export function run([kind = '', slug = '', folder = 'content']: readonly string[]): Promise<number> {
  if ((kind !== 'source' && kind !== 'material') || !isSlug(slug)) throw new Halt(USAGE)
  return withDatabase(async () => {
    const { path, text } = await fileOf(kind, slug)
    const target = join(folder, path)
    if (existsSync(target)) throw new Halt(`${target} is there already: it answers at that address.`)
    writeFileSync(target, text, { flag: 'wx' })
    const outcome = loadContent(folder)
    if (!outcome.ok) {
      rmSync(target)
      throw new Halt(
        `It cannot stand in the content as it is, and was not written:\n${outcome.faults.map(printFault).join('\n')}`,
      )
    }
    say(`Written: ${target}. Read it, check it against its source, and commit it.`)
    return 0
  })
}

async function fileOf(kind: 'source' | 'material', slug: string): Promise<WrittenFile> {
  if (kind === 'source') {
    const { body } = standing(await publishedBySlug('source', slug, null), slug)
    return sourceFile(slug, body)
  }
  const { body } = standing(await publishedBySlug('material', slug, null), slug)
  return materialFile(slug, body)
}

/** @throws Halt where nothing is published, or where it is made up for the demo */
function standing<P extends { readonly body: { readonly invented: boolean } }>(
  found: P | null,
  slug: string,
): P {
  if (found === null) throw new Halt(`Nothing of that kind is published at ${slug}.`)
  if (found.body.invented) throw new Halt(`${slug} is invented: nothing invented becomes content.`)
  return found
}
