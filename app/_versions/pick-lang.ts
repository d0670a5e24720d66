import { content } from '#lib/content/index.ts'
import { asWritten, inEnglish } from '../_ui/as-written.ts'
import { termOf } from '../_ui/label.ts'
import { nameLang } from '../_ui/term-name.tsx'
import type { PickName } from '../_write/picks.ts'

/** For words in the language that is told; in that of the page where none is. */
interface Lang {
  readonly lang?: string
}

/** The language of what a list to choose from calls a thing. */
export function langOfPick(pick: PickName | undefined, id: string): Lang {
  switch (pick) {
    case 'units':
    case 'deterioration':
      return termLang(pick, id)
    case 'materials': {
      const own = content().materials.get(id)
      return own ? nameLang(own.names) : asWritten()
    }
    case 'sources': {
      const own = content().sources.get(id)
      return own ? { lang: own.language ?? 'en' } : asWritten()
    }
    case 'rows':
      return inEnglish()
    default:
      return asWritten()
  }
}

/** The language of what a term is called. */
export const termLang = (vocabulary: string, id: string): Lang => nameLang(termOf(vocabulary, id)?.labels)
