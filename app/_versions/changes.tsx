import type { ReactNode } from 'react'
import type { WrittenKind } from '#lib/entry/body.ts'
import { type Change, diffWords } from '#lib/entry/diff.ts'
import { isList, isObject, type Json, type Path, pathText } from '#lib/entry/json.ts'
import { asWritten } from '../_ui/as-written.ts'
import { formatList } from '../_words/format.ts'
import { locale, words } from '../_words/index.ts'
import { fieldName } from './field-name.ts'
import { FieldValue } from './field-value.tsx'
import type { Shown } from './shown.ts'

/** Texts of so many letters are compared word by word; shorter ones are read at a glance. */
const LONG = 60

/** Names that the address of an item has in the record, and what its heading says; nobody reads them. */
const isTechnical = ({ path }: Change) =>
  path.at(-1) === 'id' || (path[0] === 'overrides' && path.at(-1) === 'field')

/** Of a first version: said by nobody, as its form leaves it. */
const isBlank = (change: Change): boolean =>
  change.kind === 'added' &&
  (change.after === false ||
    change.after === 'not-recorded' ||
    (isList(change.after) && change.after.length === 0) ||
    (isObject(change.after) && Object.keys(change.after).length === 0))

/**
 * What differs between two versions, a field at a time: what was there, what is there now, long texts by words.
 *
 * @param bodies the two versions (the earlier may be undefined), from which items have their names
 * @param shown what they point at, from `shownIn`
 * @param beside what stands under each field: on the desk, a place for words to the author
 */
export function ChangeList(props: {
  kind: WrittenKind
  changes: readonly Change[]
  bodies: readonly unknown[]
  shown: Shown
  /** What a field is called, where that is not by its items' names alone. */
  nameOf?: (path: Path, bodies: readonly unknown[]) => string
  beside?: (path: Path, name: string) => ReactNode
}) {
  const { kind, changes, bodies, shown, beside, nameOf = fieldName } = props
  const first = bodies[0] === undefined
  const told = changes.filter((change) => !isTechnical(change))
  const blank = first ? told.filter(isBlank) : []
  return (
    <>
      <dl className="changes">
        {told
          .filter((change) => !blank.includes(change))
          .map((change) => {
            const name = nameOf(change.path, bodies)
            return (
              <div key={`${pathText(change.path)} ${change.kind}`} className={`change change-${change.kind}`}>
                <dt>{name}</dt>
                <dd>
                  <ChangeBody kind={kind} change={change} first={first} shown={shown} />
                  {beside?.(change.path, name)}
                </dd>
              </div>
            )
          })}
      </dl>
      {blank.length > 0 && (
        <p className="note">
          {words('review')('change.blank', {
            fields: formatList(blank.map(({ path }) => nameOf(path, bodies))),
          })}
        </p>
      )}
    </>
  )
}

interface BodyProps {
  readonly kind: WrittenKind
  readonly change: Change
  readonly first: boolean
  readonly shown: Shown
}

function ChangeBody({ kind, change, first, shown }: BodyProps) {
  const { path } = change
  const valued = (value: Json) => <FieldValue kind={kind} path={path} value={value} shown={shown} />
  if (change.kind === 'reordered')
    return (
      <Pair
        was={formatList(change.before.map((key) => fieldName([...path, `[${key}]`], [])))}
        now={formatList(change.after.map((key) => fieldName([...path, `[${key}]`], [])))}
      />
    )
  if (change.kind === 'added')
    return first ? valued(change.after) : <Side side="now" value={valued(change.after)} />
  if (change.kind === 'removed') return <Side side="was" value={valued(change.before)} />
  const { before, after } = change
  if (isLong(before) && isLong(after)) return <WordChanges before={before} after={after} />
  return <Pair was={valued(before)} now={valued(after)} />
}

const Pair = ({ was, now }: { was: ReactNode; now: ReactNode }) => (
  <>
    <Side side="was" value={was} />
    <Side side="now" value={now} />
  </>
)

const Side = ({ side, value }: { side: 'was' | 'now'; value: ReactNode }) => (
  <div className="change-side">
    <span className="label">{words('review')(`change.${side}`)}</span>
    {side === 'was' ? <del>{value}</del> : <ins>{value}</ins>}
  </div>
)

const isLong = (value: Json): value is string => typeof value === 'string' && value.length > LONG

/** Two texts in one, with the words that went struck through and those that came underlined. */
function WordChanges({ before, after }: { before: string; after: string }) {
  const t = words('review')
  let at = 0
  return (
    <p className="change-words" {...asWritten()}>
      {diffWords(before, after).map(({ kind, text }) => {
        const key = at++
        if (kind === 'same') return <span key={key}>{text}</span>
        return kind === 'removed' ? (
          <del key={key}>
            <span className="hidden-words" lang={locale()}>
              {t('change.removed')}{' '}
            </span>
            {text}
          </del>
        ) : (
          <ins key={key}>
            <span className="hidden-words" lang={locale()}>
              {t('change.added')}{' '}
            </span>
            {text}
          </ins>
        )
      })}
    </p>
  )
}
