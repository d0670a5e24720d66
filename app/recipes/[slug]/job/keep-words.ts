import { words } from '../../../_words/index.ts'

/** What the browser's memory of figures says; the script has no catalogue. `{list}` is filled in there. */
export function keepWords() {
  const t = words('job')
  return {
    keep: t('own.keep'),
    offer: t('own.offer', { list: '{list}' }),
    put: t('own.put'),
    forget: t('own.forget'),
    kept: t('own.kept'),
    forgotten: t('own.forgotten'),
    done: t('own.done'),
    failed: t('own.failed'),
    none: t('own.none'),
  }
}
export type KeepWords = ReturnType<typeof keepWords>
