import type { CDPSession, Page } from 'playwright-core'

/** A node of the tree that a browser hands to a screen reader; its element's attributes beside it. */
interface Heard {
  readonly role: string
  readonly name: string
  readonly description: string
  /** Depth of a heading. */
  readonly level: number
  readonly focusable: boolean
  readonly attributes: Readonly<Record<string, string>>
}

/** What is operated, by role as Chromium calls it. */
const OPERATED = new Set([
  ...['button', 'link', 'textbox', 'searchbox', 'combobox', 'listbox', 'checkbox', 'radio', 'spinbutton'],
  ...['slider', 'switch', 'DisclosureTriangle', 'DisclosureTriangleGrouped'],
])
const PICTURES = new Set(['image', 'img', 'graphics-document'])
/** A form or a region is a landmark where it has a name. */
const LANDMARKS = new Set(['navigation', 'complementary', 'search', 'contentinfo', 'banner'])
const NAMED_LANDMARKS = new Set(['region', 'form'])

/** Tells what a screen reader would leave its listener to guess on an open page. */
export async function unheard(page: Page): Promise<string[]> {
  const tree = await heard(page)
  const of = (...roles: string[]) => tree.filter(({ role }) => roles.includes(role))
  const nameless = tree.filter(
    ({ role, name, focusable }) =>
      name === '' && (OPERATED.has(role) || PICTURES.has(role) || (focusable && role === 'group')),
  )
  const headings = of('heading')
  const skipped = headings.filter(({ level }, at) => level > (headings[at - 1]?.level ?? 0) + 1)
  const landmarks = tree.filter(
    ({ role, name }) => LANDMARKS.has(role) || (NAMED_LANDMARKS.has(role) && name !== ''),
  )
  const around = await wordsAround(page)
  return [
    ...nameless.map((one) => `${one.role} without a name: ${shown(one)}`),
    ...(headings.filter(({ level }) => level === 1).length === 1
      ? []
      : ['not one heading of the first level']),
    ...skipped.map(({ level, name }) => `heading of level ${level} below none of ${level - 1}: ${name}`),
    ...(of('main').length === 1 ? [] : ['not one main part']),
    ...of('table')
      .filter(({ name }) => name === '')
      .map((one) => `table without a caption: ${shown(one)}`),
    ...alike(landmarks, shown),
    ...alike(of('button'), shown),
    // A link may lean on the words that it stands among.
    ...alike(
      of('link'),
      ({ attributes: { href = '' } }) => href,
      ({ attributes: { href = '' } }) => around.get(href),
    ),
    ...(await unsaid(page, tree)),
  ]
}

const shown = ({ attributes }: Heard) => JSON.stringify(attributes)

/** Nodes of one role and one name, among the same words, that do different things. */
function alike(
  nodes: readonly Heard[],
  does: (node: Heard) => string,
  among: (node: Heard) => string | undefined = () => '',
): string[] {
  const known = new Map<string, string>()
  return nodes.flatMap((node) => {
    const key = `${node.role} “${node.name}”`
    const where = `${key} ${among(node)}`
    const before = known.get(where)
    known.set(where, does(node))
    return before === undefined || before === does(node) ? [] : [`${key} twice: ${before} and ${does(node)}`]
  })
}

/** The sentence, item or row that links stand in, by where they lead. */
async function wordsAround(page: Page): Promise<Map<string, string>> {
  const pairs = await page.evaluate(() =>
    [...document.querySelectorAll('a[href]')].map((link) => {
      const place = link.closest('li, tr, dl > div, figcaption') ?? link.closest('p')
      return [link.getAttribute('href') ?? '', (place?.textContent ?? '').trim()] as const
    }),
  )
  return new Map(pairs)
}

/** Units, hints and errors that stand beside a field and are not read with it. */
async function unsaid(page: Page, tree: readonly Heard[]): Promise<string[]> {
  const beside = await page.evaluate(() =>
    [...document.querySelectorAll('.field')].flatMap((field) => {
      const control = field.matches('fieldset')
        ? field
        : field.querySelector('input:not([type=hidden]), select, textarea')
      if (!control?.checkVisibility({ contentVisibilityAuto: true })) return []
      const parts = field.querySelectorAll('.field-unit, .field-hint, .field-error, .field-echo')
      const texts = [...parts].map((part) => part.textContent ?? '')
      return texts.map((text) => [control.id, text.replace(/\s+/g, ' ').trim()] as const)
    }),
  )
  const byId = new Map(tree.map((node) => [node.attributes.id, node]))
  return beside.flatMap(([id, text]) => {
    const node = byId.get(id)
    if (node === undefined) return [`a field that is not heard: ${id}`]
    return `${node.name} ${node.description}`.includes(text) ? [] : [`${id} is heard without “${text}”`]
  })
}

async function heard(page: Page): Promise<Heard[]> {
  const session = await sessionOf(page)
  await session.send('DOM.enable')
  const { nodes: elements } = await session.send('DOM.getFlattenedDocument', { depth: -1 })
  const { nodes } = await session.send('Accessibility.getFullAXTree')
  await session.send('DOM.disable')
  const byElement = new Map(nodes.map((node) => [node.backendDOMNodeId, node]))
  // In the order of the document. What has no element is a mark that a style draws, as the triangle of a summary.
  return elements.flatMap(({ backendNodeId, attributes = [] }) => {
    const node = byElement.get(backendNodeId)
    if (node === undefined || node.ignored) return []
    const { role, name, description, properties = [] } = node
    const property = (wanted: string) => properties.find((one) => one.name === wanted)?.value.value
    return {
      role: String(role?.value ?? ''),
      name: plain(name?.value),
      description: plain(description?.value),
      level: Number(property('level') ?? 0),
      focusable: property('focusable') === true,
      attributes: pairs(attributes),
    }
  })
}

const plain = (text: unknown) =>
  String(text ?? '')
    .replace(/\s+/g, ' ')
    .trim()

function pairs(flat: readonly string[]): Record<string, string> {
  const made: Record<string, string> = {}
  for (let at = 0; at < flat.length; at += 2) made[flat[at] ?? ''] = flat[at + 1] ?? ''
  return made
}

const sessions = new WeakMap<Page, Promise<CDPSession>>()

/** The one session of a page that speaks the browser's own protocol. */
export function sessionOf(page: Page): Promise<CDPSession> {
  const known = sessions.get(page) ?? page.context().newCDPSession(page)
  sessions.set(page, known)
  return known
}
