import type { Draft } from '#lib/db/drafts.ts'
import { formatList } from '../_words/format.ts'
import { words } from '../_words/index.ts'
import { countries } from './countries.ts'
import { lookOf } from './look.ts'
import { labelIn } from './options.ts'
import type { FormView } from './view.ts'

const t = words('write')

/** A field's text as its form shows it: what was chosen by its words, what was typed as it was typed. */
export function textShown({ tree, own }: Pick<FormView, 'tree' | 'own'>, name: string, text: string): string {
  if (text === 'thousands' || text === 'decimal') return t(`mark.${text}`)
  const look = lookOf(tree, name)
  switch (look.as) {
    case 'select':
    case 'scale':
    case 'checks': {
      const chosen = text.split('\n').filter((one) => one !== '')
      return formatList(chosen.map((one) => labelIn(look.words, one)))
    }
    case 'own':
      return own[look.of].find(({ value }) => value === text)?.label ?? text
    case 'country':
      return countries().find(({ value }) => value === text)?.label ?? text
    case 'answer':
    case 'tick':
      return text === 'yes' || text === 'no' ? t(text) : text
    default:
      return text
  }
}

/** Characters of texts that one form carries: what it posts must fit into a request. */
const MOST_CARRIED = 40_000

/** What stands and what waits, field by field, as much of it as one form can settle: the rest comes after. */
export function waitingTexts({ typed, held }: Pick<Draft, 'typed' | 'held'>): Record<string, string[]> {
  const seen: Record<string, string[]> = {}
  let room = MOST_CARRIED
  for (const [name, texts] of Object.entries(held ?? {})) {
    const all = [typed[name] ?? '', ...texts]
    room -= all.join('').length
    if (room < 0 && Object.keys(seen).length > 0) break
    seen[name] = all
  }
  return seen
}

/** Whether texts of a field can stand in it one after the other. */
export const canJoin = ({ tree }: Pick<FormView, 'tree'>, name: string): boolean =>
  lookOf(tree, name).as === 'words'
