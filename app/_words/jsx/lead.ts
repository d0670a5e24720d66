import { inLanguage } from '../language.ts'

const LEADING: Readonly<Record<string, string>> = { a: 'href', form: 'action', button: 'formAction' }

/**
 * Keeps links and forms of a page in the page's language, so that no page has to think of it: `/recipes` leads from a
 * Spanish page to `/es/recipes`. A link with `hrefLang` says itself where it leads.
 */
export function lead<P>(type: unknown, props: P): P {
  const name = typeof type === 'string' ? LEADING[type] : undefined
  if (name === undefined || props === null) return props
  const given = props as Record<string, unknown>
  const address = given[name]
  if (typeof address !== 'string' || given.hrefLang !== undefined) return props
  const led = inLanguage(address)
  return led === address ? props : { ...props, [name]: led }
}
