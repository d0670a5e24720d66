import { nodeAt } from '#lib/entry/tree.ts'
import { words } from '../_words/index.ts'
import { FormField, hintWithWords } from './form-field.tsx'
import { addLabel, itemLabel, labelFor } from './labels.ts'
import type { ListPart, Part } from './layouts/parts.ts'
import { lookOf } from './look.ts'
import { itemsOf } from './read.ts'
import type { FormView } from './view.ts'

const t = words('write')

interface Props {
  readonly view: FormView
  readonly parts: readonly Part[]
  /** Path of the item that the parts stand in, with its dot; empty for the body itself. */
  readonly within?: string
  /** List that one more blank item was asked of. */
  readonly more: string | undefined
  /** What stands in a field until its writer says otherwise. */
  readonly proposed?: Readonly<Record<string, string>> | undefined
}

/** Fields and lists of a step, in its order. */
export const FormParts = ({ view, parts, within = '', more, proposed }: Props) =>
  parts.map((part) => {
    if (typeof part !== 'string')
      return <FormList key={part.list} view={view} part={part} list={`${within}${part.list}`} more={more} />
    const name = `${within}${part}`
    return lookOf(view.tree, name).as === 'picks' ? (
      <PickList key={name} view={view} list={name} more={more} />
    ) : (
      <FormField key={name} view={view} name={name} value={proposed?.[name]} />
    )
  })

/** Numbers of the items shown: those there are, blank ones that stand ready, one more where it was asked for. */
export function itemsShown(view: FormView, list: string, ready: number, more: boolean): number[] {
  const there = itemsOf(view.typed, list)
  const node = nodeAt(view.tree, list)
  const most = node?.type === 'list' ? node.max : 0
  const wanted = Math.min(most, Math.max(ready, there.length + (more ? 1 : 0)))
  const next = (there.at(-1) ?? -1) + 1
  return [...there, ...Array.from({ length: Math.max(0, wanted - there.length) }, (_, i) => next + i)]
}

/** What a blank form has one of: each holds lists of its own. */
const ONE = /(?:^|\.)(?:works|mortars|sheets)$/
/** Items of any other list that stand ready where none can be added. */
const ROOM = 3

/** Numbers of the items of a list that a step shows. */
export function itemsOfPart(
  view: FormView,
  { items, ready = 0 }: ListPart,
  list: string,
  more: boolean,
): number[] {
  if (view.blank === true) return itemsShown(view, list, ONE.test(list) ? 1 : ROOM, false)
  return items === 'kept' ? itemsOf(view.typed, list) : itemsShown(view, list, ready, more)
}

function FormList({
  view,
  part,
  list,
  more,
}: {
  view: FormView
  part: ListPart
  list: string
  more: string | undefined
}) {
  const kept = part.items === 'kept'
  const items = itemsOfPart(view, part, list, more === list)
  // Of a blank form, whose steps stand on one page, several tell more of one list: the first has its name.
  const named = view.blank !== true || !kept
  const there = new Set(itemsOf(view.typed, list))
  const note = view.notes.get(list)
  if (kept && items.length === 0) return null
  return (
    <div className="write-list" id={named ? `field-${list}` : undefined} tabIndex={-1}>
      {named && <ListHint view={view} list={list} />}
      {items.map((index, at) => (
        <fieldset key={index} id={named ? `item-${list}.${index}` : undefined} tabIndex={-1}>
          <legend>{legendOf(view, list, index, at + 1)}</legend>
          <div className="write-parts">
            <FormParts view={view} parts={part.parts} within={`${list}.${index}.`} more={more} />
          </div>
          {(!kept || list === 'photos') && view.blank !== true && there.has(index) && (
            <button
              className="button button-plain"
              type="submit"
              name=":do"
              value={`remove ${list}.${index}`}
            >
              {t('form.remove')}
              <span className="hidden-words"> {legendOf(view, list, index, at + 1)}</span>
            </button>
          )}
        </fieldset>
      ))}
      <p className="field-echo">{note}</p>
      {named && <p className="field-live" id={`live-${list}`} aria-live="polite" />}
      {!kept && view.blank !== true && (
        <button className="button button-plain" type="submit" name=":do" value={`add ${list}`}>
          {addLabel(list)}
        </button>
      )}
    </div>
  )
}

function ListHint({ view, list }: { view: FormView; list: string }) {
  const hint = hintWithWords(view, list)
  return hint === undefined ? null : <p className="field-hint">{hint}</p>
}

/** An item by its number, and by what it is called where that is known. */
function legendOf(view: FormView, list: string, index: number, number: number): string {
  const item = itemLabel(list, number)
  const name = ['title', 'material'].map((key) => view.typed[`${list}.${index}.${key}`]).find(Boolean)
  return name === undefined ? item : t('form.item', { item, name })
}

/** Numbers of the names that a list of names shows. */
export const picksShown = (view: FormView, list: string, more: boolean): number[] =>
  itemsShown(view, list, itemsOf(view.typed, list).length + (view.blank === true ? ROOM : 1), more)

/** A list of names, each chosen by typing. */
function PickList({ view, list, more }: { view: FormView; list: string; more: string | undefined }) {
  const items = picksShown(view, list, more === list)
  return (
    <fieldset className="write-list" id={`field-${list}`} tabIndex={-1}>
      <legend>{labelFor(list)}</legend>
      <ListHint view={view} list={list} />
      <div className="write-parts">
        {items.map((index, at) => (
          <div key={index} id={`item-${list}.${index}`} tabIndex={-1}>
            <FormField view={view} name={`${list}.${index}`} place={at + 1} />
          </div>
        ))}
      </div>
      {view.blank !== true && (
        <button className="button button-plain" type="submit" name=":do" value={`add ${list}`}>
          {t('form.more')}
          <span className="hidden-words">: {labelFor(list)}</span>
        </button>
      )}
    </fieldset>
  )
}
