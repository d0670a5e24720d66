import { cloneElement, Fragment, isValidElement, type ReactElement, type ReactNode } from 'react'
import { askedLanguage, speaking } from '#app/asked.ts'
import { words } from '../_words/index.ts'
import type { Language } from '../_words/languages.ts'

/**
 * A part of a page in the language in which it was kept, whatever the page speaks: a frozen sheet mixes words that stand
 * as they were with figures, and both must be read in one way.
 *
 * @param props.children components without state of their own; all of it is drawn here and now
 */
export function AsKept({ language, children }: { language: Language; children: ReactNode }) {
  if (language === askedLanguage()) return children
  return <div lang={language}>{speaking(language, () => drawn(children))}</div>
}

/** That a sheet speaks another language than its page; nothing where it does not. */
export const KeptIn = ({ language }: { language: Language }) =>
  language === askedLanguage() ? null : <p className="note">{words('kept')(`one.keptIn.${language}`)}</p>

/** Elements drawn at once: left to themselves they are drawn later, when another language is spoken. */
function drawn(node: ReactNode): ReactNode {
  if (Array.isArray(node)) return node.map(drawn)
  if (!isValidElement(node)) return node
  const { type, props, key } = node as ReactElement<{ children?: ReactNode }>
  // A part with state of its own is drawn in the browser, which knows the page's language alone.
  if (typeof type === 'function' && !('$$typeof' in type)) {
    const component = type as (props: object) => ReactNode
    return <Fragment key={key}>{drawn(component(props))}</Fragment>
  }
  const { children } = props
  if (children === undefined) return node
  return Array.isArray(children)
    ? cloneElement(node, {}, ...children.map(drawn))
    : cloneElement(node, {}, drawn(children))
}
