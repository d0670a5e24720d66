import { existsSync, readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'

/** A file of content: `path` as faults print it (from the content folder on), and its text. */
export interface ContentFile {
  readonly path: string
  /** File name without its ending. */
  readonly name: string
  readonly text: string
}

/** The files of one folder of content with one ending, by name; an absent folder is an empty one. */
export function readFolder(dir: string, folder: string, ending: string): readonly ContentFile[] {
  const full = join(dir, folder)
  if (!existsSync(full)) return []
  return readdirSync(full)
    .filter((name) => name.endsWith(ending) && name !== 'README.md')
    .sort()
    .map((name) => ({
      path: `content/${folder}/${name}`,
      name: name.slice(0, -ending.length),
      text: readFileSync(join(full, name), 'utf8'),
    }))
}
