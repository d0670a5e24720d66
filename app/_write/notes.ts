import { content } from '#lib/content/index.ts'
import type { Draft } from '#lib/db/drafts.ts'
import { recipeBySlug } from '#lib/db/recipes.ts'
import { bodyTree, nodeAt } from '#lib/entry/tree.ts'
import type { Range } from '#lib/mortar/range.ts'
import { readAmount, type Typed } from '../_http/form.ts'
import { withUnit } from '../_ui/quantity.tsx'
import { formatDate, formatNumber } from '../_words/format.ts'
import { words } from '../_words/index.ts'
import { lookOf, pickOf } from './look.ts'
import { folded } from './pick.ts'
import type { Picks } from './picks.ts'
import { compareWithRow, mixNote, ratiosNote } from './ratio-notes.ts'
import type { ReadForm } from './read.ts'
import { readDate } from './read-date.ts'

const t = words('write')

/** What a form says beside its fields: how a figure, a date or a name was read, and what a mix comes to. */
export async function notesOf(draft: Draft, read: ReadForm, picks: Picks): Promise<Map<string, string>> {
  const { kind, typed } = draft
  const notes = new Map<string, string>()
  for (const [name, text] of Object.entries(typed)) {
    const note = pickOf(name) === undefined ? readNote(kind, typed, name) : nameNote(picks, name, text)
    if (note !== undefined) notes.set(name, note)
  }
  for (const [name, note] of await ratioNotes(read, picks)) notes.set(name, note)
  return notes
}

function nameNote(picks: Picks, name: string, text: string): string | undefined {
  const pick = picks[pickOf(name) ?? 'units']
  const id = pick.find(text.trim())
  if (id === undefined || pickOf(name) === 'recipes') return undefined
  const label = pick.show(id)
  return folded(label) === folded(text) ? undefined : t('form.local', { name: text.trim(), label })
}

function readNote(kind: Draft['kind'], typed: Typed, name: string): string | undefined {
  const node = nodeAt(bodyTree(kind), name)
  const text = (typed[name] ?? '').trim()
  if (node?.type === 'text' && (node.form === 'date' || node.form === 'day')) {
    const date = readDate(text)
    return date !== text && /^\d{4}(-\d\d){0,2}$/.test(date)
      ? t('form.readAs', { value: formatDate(date) })
      : undefined
  }
  if (node?.type !== 'number' && node?.type !== 'range') return undefined
  const { amount } = readAmount(typed, name)
  const look = lookOf(bodyTree(kind), name)
  const unit = 'unit' in look && look.unit !== undefined ? look.unit : '1'
  return amount && !/^-?\d+(\.\d+)?$/.test(text)
    ? t('form.readAs', { value: amountText(amount, unit) })
    : undefined
}

const amountText = ({ low, high }: Range, unit: string) =>
  withUnit(low === high ? formatNumber(low) : `${formatNumber(low)}–${formatNumber(high)}`, unit)

interface Mixed {
  readonly ingredients?: unknown
  readonly follows?: readonly string[]
  readonly works?: readonly {
    readonly recipe?: string
    readonly mixed?: { readonly ingredients?: unknown }
  }[]
}

/** The ratio of each recipe chosen, of what was mixed, and of each row that a recipe says it follows. */
async function ratioNotes(read: ReadForm, picks: Picks): Promise<[string, string][]> {
  const { ingredients, follows = [], works = [] } = read.body as Mixed
  const own = mixNote(ingredients)
  const chosen = await Promise.all(
    works.map(async ({ recipe, mixed }, i): Promise<[string, string][]> => {
      const note = recipe === undefined ? undefined : await recipeNote(recipe)
      const mix = mixNote(mixed?.ingredients)
      return [
        ...(note === undefined ? [] : [[read.nameOf(`works.${i}.recipe`), note] as [string, string]]),
        ...(mix === undefined
          ? []
          : [[read.nameOf(`works.${i}.mixed.ingredients`), mix] as [string, string]]),
      ]
    }),
  )
  const rows = follows.flatMap((ref, i): [string, string][] => {
    const row = content().rows.get(ref)
    const note = row && compareWithRow(ingredients, row, picks.rows.show(ref))
    return note === undefined ? [] : [[read.nameOf(`follows.${i}`), note]]
  })
  return [...(own === undefined ? [] : [['ingredients', own] as [string, string]]), ...chosen.flat(), ...rows]
}

async function recipeNote(ref: string): Promise<string | undefined> {
  const at = ref.indexOf('@')
  const recipe = await recipeBySlug(ref.slice(0, at), Number(ref.slice(at + 1)))
  return recipe === null ? undefined : ratiosNote(recipe.body.title, recipe.body.ingredients)
}
