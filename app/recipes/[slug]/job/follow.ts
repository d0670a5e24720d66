/** What the reader did to the page, or a script put there: an answer says nothing of either. */
const OWN: ReadonlySet<string> = new Set(['open', 'autofocus'])

/**
 * Makes one part of the page say what the same part of an answer says. What is the same is left alone, so that the
 * focus, the caret and what is typed stay where they are, and nothing is laid out that did not change. What a script
 * draws by itself carries `data-script` and stays as it is.
 */
export function follow(ours: Element, theirs: Element): void {
  if (ours.hasAttribute('data-script') || ours.isEqualNode(theirs)) return
  followAttributes(ours, theirs)
  followChildren(ours, theirs)
}

/** The same for what is within, whatever the two are themselves. */
export function followChildren(ours: ParentNode, theirs: ParentNode): void {
  const there = new Map<string, ChildNode[]>()
  for (const node of ours.childNodes) {
    const key = keyOf(node)
    there.set(key, [...(there.get(key) ?? []), node])
  }
  const pairs = [...theirs.childNodes].map((wanted) => ({ same: there.get(keyOf(wanted))?.shift(), wanted }))
  for (const left of there.values()) for (const node of left) node.remove()
  let next: ChildNode | null = ours.firstChild
  for (const { same, wanted } of pairs) {
    if (same === undefined) ours.insertBefore(document.importNode(wanted, true), next)
    else if (same === next) next = next.nextSibling
    else ours.insertBefore(same, next)
    if (same instanceof Element && wanted.nodeType === Node.ELEMENT_NODE) follow(same, wanted as Element)
    else if (same && same.nodeValue !== wanted.nodeValue) same.nodeValue = wanted.nodeValue
  }
}

/** Parts of a form that are known by the field that they hold. */
const HOLDS_FIELD = '.field, .job-field, fieldset, label, option'

/** By what a node is known among its siblings: its id or its field, or else its kind alone, in their order. */
function keyOf(node: ChildNode): string {
  if (!(node.nodeType === Node.ELEMENT_NODE)) return node.nodeName
  const element = node as Element
  if (element.id !== '') return `${element.nodeName}#${element.id}`
  const field = element.matches(HOLDS_FIELD) ? element.querySelector('[name]')?.getAttribute('name') : null
  return `${element.nodeName} ${field ?? ''}`
}

/** What is the same is left alone: setting it again would have the page laid out again. */
function followAttributes(ours: Element, theirs: Element): void {
  for (const { name } of [...ours.attributes])
    if (!OWN.has(name) && !theirs.hasAttribute(name)) ours.removeAttribute(name)
  for (const { name, value } of theirs.attributes)
    if (!OWN.has(name) && ours.getAttribute(name) !== value) ours.setAttribute(name, value)
}
