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
      return countries.find(({ value }) => value === text)?.label ?? text
    case 'answer':
    case 'tick':
      return text === 'yes' || text === 'no' ? t(text) : text
    default:
      return text
  }
}

/** Whether texts of a field can stand in it one after the other. */
export const canJoin = ({ tree }: Pick<FormView, 'tree'>, name: string): boolean =>
  lookOf(tree, name).as === 'words'
