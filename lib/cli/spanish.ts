import { readFileSync, writeFileSync } from 'node:fs'
import { content } from '#lib/content/index.ts'
import { comparePairs, type Marks, markPairs, type Pair } from '#lib/content/pairs.ts'
import { spanishOf } from '#lib/content/spanish.ts'
import { say } from './say.ts'

/** Texts in both languages, and the file that keeps their marks. */
export interface MarkedTexts {
  readonly file: string
  readonly pairs: () => readonly Pair[]
}

/** All that is said in two languages. */
export const MARKED: readonly MarkedTexts[] = [
  { file: 'content/spanish.json', pairs: () => spanishOf(content()) },
]

/** The marks that a file keeps. */
export const readMarks = (file: string): Marks => JSON.parse(readFileSync(file, 'utf8'))

/**
 * `npm run spanish`: marks every Spanish text that is new or changed as set beside its English, and tells those whose
 * English changed while the Spanish stayed; code 1 while there are any. `npm run spanish -- <key> …` marks these too:
 * somebody looked, and the Spanish says the same as it is.
 */
export async function run(lookedOver: readonly string[]): Promise<number> {
  const sets = MARKED.map(({ file, pairs }) => ({ file, pairs: pairs(), marks: readMarks(file) }))
  const stale = sets.flatMap(({ pairs, marks }) => comparePairs(pairs, marks).stale)
  const unknown = lookedOver.filter((key) => !stale.some((pair) => pair.key === key))
  for (const key of unknown) say(`${key} is no text whose English changed alone; nothing was marked.`)
  if (unknown.length > 0) return 1
  const looked = new Set(lookedOver)
  for (const { file, pairs, marks } of sets)
    writeFileSync(file, `${JSON.stringify(markPairs(pairs, marks, looked), null, 2)}\n`)
  const left = stale.filter(({ key }) => !looked.has(key))
  for (const { key, english, spanish } of left)
    say(`${key}\n  English now: ${english}\n  Spanish: ${spanish}`)
  say(
    left.length === 0
      ? `${sets.flatMap(({ pairs }) => pairs).length} Spanish texts were set beside their English.`
      : `${left.length} Spanish text(s) to look over: change them, or name the key of each that may stay.`,
  )
  return left.length === 0 ? 0 : 1
}
