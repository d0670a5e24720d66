type Text = Readonly<Record<string, string>>

/** Name of the text of a draft that tells in which order items of a list came in, by their numbers. */
const orderName = (list: string) => `${list}.order`

/** What a list's items are known by, of those lists whose numbers do not tell the order themselves. */
const KNOWN_BY: Readonly<Record<string, string>> = { photos: 'sha256' }

const placed = (text: Text, list: string): number[] =>
  (text[orderName(list)] ?? '').split(' ').flatMap((number) => (number === '' ? [] : [Number(number)]))

/** The numbers of a list's items in the order of the form: as they came in, where that is told, behind all others. */
export function inOrder(numbers: readonly number[], text: Text, list: string): number[] {
  const order = placed(text, list)
  return [...numbers].sort((a, b) => order.indexOf(a) - order.indexOf(b) || a - b)
}

/**
 * A draft's text with the order of its pictures brought up to date: their numbers are told by their digests, so that
 * two windows agree on them, and say nothing of which came first.
 *
 * @param before as it was kept
 * @param after as it is to be kept, what is new in it in the order in which it came
 */
export function noteOrder(before: Text, after: Text): Text {
  return Object.entries(KNOWN_BY).reduce((text, [list, key]) => {
    const had = new Set(itemsBy(before, list, key))
    const there = itemsBy(after, list, key)
    const known = placed(after, list).filter((number) => there.includes(number))
    const news = there.filter((number) => !had.has(number) && !known.includes(number))
    const { [orderName(list)]: _, ...rest } = text
    const order = [...known, ...news]
    return order.length === 0 ? rest : { ...rest, [orderName(list)]: order.join(' ') }
  }, after)
}

/** Numbers of the items that hold the text they are known by, as they stand in the draft's text. */
function itemsBy(text: Text, list: string, key: string): number[] {
  return Object.entries(text).flatMap(([name, value]) => {
    const [, of, number, field] = /^(\w+)\.(\d+)\.(\w+)$/.exec(name) ?? []
    return of === list && field === key && value !== '' ? [Number(number)] : []
  })
}
