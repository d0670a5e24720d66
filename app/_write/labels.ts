import type { FieldFault } from '#lib/errors.ts'
import { faultSentence } from '../_http/fault-sentence.ts'
import type { Typed } from '../_http/form.ts'
import write from '../_words/en/write.json'
import { words } from '../_words/index.ts'
import { wordKey } from './layout.ts'
import { itemsOf } from './read.ts'

const t = words('write')
type Label = keyof typeof write.label
type Short = keyof typeof write.short
type Hint = keyof typeof write.hint
type Item = keyof typeof write.item
type Add = keyof typeof write.add

const isIn = <T extends object>(list: T, key: string): key is Extract<keyof T, string> =>
  Object.hasOwn(list, key)

/** What a form calls a field. */
export function labelFor(name: string): string {
  const key = wordKey(name)
  return isIn(write.label, key) ? t(`label.${key satisfies Label}`) : key
}

/** The same where the label is a whole sentence. */
export function shortLabel(name: string): string {
  const key = wordKey(name)
  return isIn(write.short, key) ? t(`short.${key satisfies Short}`) : labelFor(name)
}

/** What helps to fill a field, where there is something to say. */
export function hintFor(kind: string, name: string): string | undefined {
  const key = wordKey(name)
  const own = `${kind}-${key}`
  if (isIn(write.hint, own)) return t(`hint.${own satisfies Hint}`)
  return isIn(write.hint, key) ? t(`hint.${key satisfies Hint}`) : undefined
}

/** What the form calls one item of a list. */
export function itemLabel(list: string, number: number): string {
  const key = wordKey(list)
  return isIn(write.item, key) ? t(`item.${key satisfies Item}`, { number: String(number) }) : String(number)
}

/** The words of the button that adds an item. */
export function addLabel(list: string): string {
  const key = wordKey(list)
  return isIn(write.add, key) ? t(`add.${key satisfies Add}`) : key
}

/**
 * A field by its label and the items it stands in: `Work 2, Ingredient 1, Parts`.
 *
 * @param numberOf place of an item in its list as the reader counts, from 1
 */
export function fullLabel(name: string, numberOf: (list: string, index: number) => number): string {
  const [, figure] = /^(.*)-mark$/.exec(name) ?? []
  if (figure !== undefined) return `${fullLabel(figure, numberOf)}, ${t('mark.legend')}`
  const keys = name.split('.')
  const items = keys.flatMap((key, at) => {
    const list = keys.slice(0, at).join('.')
    return /^\d+$/.test(key) && isIn(write.item, wordKey(list))
      ? [itemLabel(list, numberOf(list, Number(key)))]
      : []
  })
  return [...items, shortLabel(name)].join(', ')
}

/** Place of an item as the reader counts: those that the form holds, from 1; of one that it does not hold, the next. */
export const numberIn =
  (typed: Typed) =>
  (list: string, index: number): number => {
    const items = itemsOf(typed, list)
    const at = items.indexOf(index)
    return (at < 0 ? items.filter((one) => one < index).length : at) + 1
  }

/** One fault as a sentence of a form. */
export const sentenceOf = (fault: FieldFault, label: string): string => faultSentence(fault, label)
