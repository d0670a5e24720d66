import { content } from '#lib/content/index.ts'
import { caseBySlug } from '#lib/db/cases.ts'
import type { Draft, DraftText } from '#lib/db/drafts.ts'
import { materialsIn, readMaterials } from '#lib/db/materials.ts'
import { ownPhotos, type PhotoFacts, photoFacts } from '#lib/db/photos.ts'
import type { WrittenKind } from '#lib/entry/body.ts'
import type { Season } from '#lib/entry/terms.ts'
import { bodyTree, type ObjectNode } from '#lib/entry/tree.ts'
import type { WorkedOn } from '#lib/entry/worked-on.ts'
import type { FieldFault } from '#lib/errors.ts'
import type { Option } from '../_ui/field.tsx'
import { inSentence, labelOf, termName } from '../_ui/label.ts'
import { formatList } from '../_words/format.ts'
import { words } from '../_words/index.ts'
import { faultsWithDates } from './date-faults.ts'
import { entryFaults } from './entry-faults.ts'
import { fullLabel, numberIn, sentenceOf } from './labels.ts'
import { generic, stepOf } from './layout.ts'
import { type OwnList, pickOf } from './look.ts'
import { notesOf } from './notes.ts'
import { type Picks, readPicks } from './picks.ts'
import { itemsOf, type ReadForm, readForm } from './read.ts'
import { type Returned, returnedOf } from './returned.ts'
import { seasonOfDay, withSeason } from './season.ts'
import { sheetChanges, sheetChoices, sheetsNamed } from './sheets.ts'

/** A fault of a form, under the field's name. */
export interface ShownFault {
  readonly name: string
  readonly step: string
  readonly sentence: string
  /** Nothing was typed there yet: no mistake so far. */
  readonly missing: boolean
}

/** A draft as its form shows it. */
export interface FormView {
  readonly draft: Draft
  readonly kind: WrittenKind
  readonly tree: ObjectNode
  readonly typed: Readonly<Record<string, string>>
  /** It is a form to be written on with no signal, all steps in one: no item can be added or taken out. */
  readonly blank?: true
  readonly read: ReadForm
  readonly picks: Picks
  readonly own: Readonly<Record<OwnList, readonly Option[]>>
  /** Copies of the kept sheets that it names, by their ids, where its writer has them. */
  readonly sheets: ReadonlyMap<string, WorkedOn>
  readonly faults: readonly ShownFault[]
  /** Whether fields that are still blank are shown as faults too. */
  readonly all: boolean
  /** The pictures that its writer has, by digest. */
  readonly pictures: ReadonlyMap<string, PhotoFacts>
  /** What is said beside a field: what was read from it, the ratio of a recipe. */
  readonly notes: ReadonlyMap<string, string>
  /** What it is about, as far as that is known: its title, or the title of the case that was visited. */
  readonly title: string | undefined
  /** What the version that it corrects came back with. */
  readonly returned: Returned | null
}

/** Reads a draft: its body as far as it goes, everything wrong with it, and what helps. */
export async function viewOf(draft: Draft, all = false): Promise<FormView> {
  const { kind, typed } = draft
  const [picks, sheets, visited] = await Promise.all([
    readPicks(),
    sheetsNamed(draft),
    kind === 'visit' ? caseBySlug(typed.case ?? '') : null,
  ])
  // What is still to be copied from a sheet counts as there: nobody types it.
  const copied = Object.entries(sheetChanges(draft, sheets)).map(([name, { is }]) => [name, is] as const)
  const season = kind === 'visit' ? seasonOfDay(typed, visited?.body.place) : undefined
  const whole = withSeason(reasoned({ ...typed, ...Object.fromEntries(copied) }), season)
  const read = readForm(kind, whole, finder(picks))
  await readMaterials(materialsIn(read.body))
  const faults = [
    ...faultsWithDates(kind, read, visited?.body.works ?? []),
    ...entryFaults(draft, read.body),
  ].map((fault) => shown(withNearest(fault, picks), draft))
  const [notes, pictures, returned, ownSheets] = await Promise.all([
    notesOf(draft, read, picks),
    picturesOf(draft),
    returnedOf(kind, draft.slug, draft.basedOn),
    sheetChoices(draft),
  ])
  if (season !== undefined) notes.set('season', seasonNote(season, typed.season || season))
  const title = typed.title ?? visited?.body.title
  const own = {
    works: worksToSee(visited),
    mortars: mortarsOf(read.body),
    tables: tables(),
    surveyClasses: surveyClasses(),
    sheets: ownSheets,
  }
  return {
    draft,
    kind,
    tree: bodyTree(kind),
    typed,
    read,
    picks,
    own,
    sheets,
    faults,
    all,
    pictures,
    notes,
    returned,
    title,
  }
}

type Visited = Awaited<ReturnType<typeof caseBySlug>>

/** What the day says, and where its writer chose otherwise, that this stands. */
function seasonNote(season: Season, chosen: string): string {
  const label = (one: string) => inSentence(labelOf('seasons', one))
  return chosen === season
    ? words('write')('form.season', { season: label(season) })
    : words('write')('form.seasonOther', { season: label(season), chosen: label(chosen) })
}

/** Without the findings that nobody gave a reason for: each is asked about again. */
const reasoned = (typed: DraftText): DraftText =>
  Object.fromEntries(
    Object.entries(typed).filter(([name]) => {
      const [, slot] = /^overrides\.(\d+)\./.exec(name) ?? []
      return slot === undefined || (typed[`overrides.${slot}.reason`] ?? '').trim() !== ''
    }),
  )

/** What a text names, by the list that its field chooses from; other ids stand for themselves. */
export const finder =
  (picks: Picks) =>
  (name: string, text: string): string | undefined => {
    const pick = pickOf(name)
    return pick === undefined ? text : picks[pick].find(text)
  }

/** What a field shows for an id. */
export const shower =
  (picks: Picks) =>
  (name: string, id: string): string => {
    const pick = pickOf(name)
    return pick === undefined ? id : picks[pick].show(id)
  }

/** A name that nothing goes by: what may have been meant, and of a stone the broader words that will do. */
function withNearest(fault: FieldFault, picks: Picks): FieldFault {
  const pick = fault.code === 'unknown' ? pickOf(fault.field) : undefined
  if (pick === undefined) return fault
  const near = picks[pick].near(String(fault.value ?? ''))
  const isStone = generic(fault.field) === 'fabric.units.*.unit'
  const broad = isStone && near.length === 0 ? BROAD_UNITS.map((id) => picks.units.show(id)) : near
  if (broad.length === 0) return fault
  return { ...fault, code: isStone ? 'unknown-stone' : 'unknown', limit: formatList(broad, 'disjunction') }
}

/** Words that will do for any wall. */
const BROAD_UNITS = ['stone', 'brick', 'earth'] as const

function shown(fault: FieldFault, { kind, typed }: Draft): ShownFault {
  const name = fault.field
  const text = typed[name]
  // What was typed is shown again as it was typed, and not as it was read.
  const value = typeof fault.value === 'number' ? fault.value : (text ?? fault.value)
  return {
    name,
    step: stepOf(kind, name),
    sentence: sentenceOf(
      { ...fault, ...(value !== undefined && { value }) },
      fullLabel(name, numberIn(typed)),
    ),
    missing: (text ?? '') === '' && itemsOf(typed, name).length === 0,
  }
}

/** Those that the draft shows, and those sent lately that it may come to show. */
async function picturesOf({ kind, typed, ownerKey }: Draft): Promise<ReadonlyMap<string, PhotoFacts>> {
  if (kind !== 'visit') return new Map()
  const own = await ownPhotos({ kind: 'member', key: ownerKey, roles: ['contributor'] }, { limit: 60 })
  const shown = await photoFacts(itemsOf(typed, 'photos').flatMap((i) => typed[`photos.${i}.sha256`] ?? []))
  return new Map([...own.map((photo) => [photo.sha256, photo] as const), ...shown])
}

const mortarsOf = (body: unknown): Option[] => {
  const { mortars = [] } = body as { mortars?: readonly { id?: string; where?: string }[] }
  return mortars.flatMap(({ id, where }) => (id === undefined ? [] : [{ value: id, label: where ?? id }]))
}

const worksToSee = (visited: Visited): Option[] =>
  (visited?.body.works ?? []).map(({ id, title, finished }) => ({
    value: id,
    label: words('write')('form.work', { title, year: finished.slice(0, 4) }),
  }))

const tables = (): Option[] =>
  [...content().tables.values()].map(({ id, title }) => ({ value: id, label: title }))

const surveyClasses = (): Option[] =>
  [...(content().vocabularies.get('survey-classes')?.values() ?? [])].map((term) => ({
    value: term.id,
    label: termName(term),
  }))
