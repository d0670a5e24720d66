import { content } from '#lib/content/index.ts'
import type { KeptRecipe } from '#lib/db/kept-sheets.ts'
import type { KeptFigures } from '#lib/entry/kept-sheet.ts'
import { SUMS_VERSION } from '#lib/mortar/version.ts'
import { type Typed, typedFrom } from '../_http/form.ts'
import type { FigureVersions } from '../_ui/changes-since.ts'
import type { System } from '../_ui/systems.ts'
import { benchData } from '../_ui/workshop/data.ts'
import { inputPhrases } from '../_ui/workshop/result.tsx'
import { workOut } from '../_ui/workshop/run.ts'
import { addressOf, versionsOf } from '../_ui/workshop/versions.ts'
import { words } from '../_words/index.ts'
import { inLanguage, splitLanguage } from '../_words/language.ts'
import { calculationNamed } from '../work-out/calculations.ts'
import { freezeBlocks } from './freeze.ts'
import { freezeSteps } from './freeze-steps.ts'
import { within } from './within.ts'
import { workedJob } from './worked-job.ts'

/** A sheet worked from its address, with all that is kept of it. */
export interface WorkedSheet {
  /** `job`, or the last part of a calculation's address. */
  readonly calculation: string
  /** What it may be called until somebody names it. */
  readonly title: string
  /** Holds every input and the versions. */
  readonly address: string
  readonly system: System
  readonly versions: FigureVersions
  readonly recipe:
    | (KeptRecipe & {
        readonly title: string
        /** The revision whose standing, and reason for it, the sheet shows. */
        readonly standingFrom: number
      })
    | null
  readonly figures: KeptFigures
}

/** What came of working it: the sheet, or what is wrong with its inputs; null for what is no address of a sheet. */
export type Working =
  | { readonly ok: true; readonly sheet: WorkedSheet }
  | { readonly ok: false; readonly sentences: readonly string[] }

const WORKSHOP = /^\/work-out\/([a-z-]+)$/
const JOB = /^\/recipes\/([a-z0-9-]+)\/job$/

/**
 * Works a sheet from its address, with the content and the sums of today.
 *
 * @param latest with the recipe as it is published now, whatever revision the address names
 */
export async function workSheet(address: string, { latest = false } = {}): Promise<Working | null> {
  const parts = partsOf(address)
  if (parts === null) return null
  const { path, typed } = parts
  const [, name = ''] = WORKSHOP.exec(path) ?? []
  if (name !== '') return workedBench(name, inLanguage(path), typed)
  const [, slug = ''] = JOB.exec(path) ?? []
  return slug === '' ? null : workedJob(slug, inLanguage(path), typed, latest)
}

/** Path, without its language, and inputs of an address of this site; null for what is none. */
export function partsOf(address: string): { path: string; typed: Typed } | null {
  const at = 'http://site.example'
  if (!/^\/(?![/\\])/.test(address) || !URL.canParse(address, at)) return null
  const { origin, pathname, searchParams } = new URL(address, at)
  const query = Object.fromEntries([...searchParams.keys()].map((name) => [name, searchParams.getAll(name)]))
  return origin === at ? { path: splitLanguage(pathname).path, typed: typedFrom(query) } : null
}

function workedBench(name: string, path: string, typed: Typed): Working | null {
  const of = calculationNamed(name)
  if (of === undefined) return null
  const { form, shown, faults } = workOut(of.calculation, typed, benchData(of.calculation))
  if (form.fresh) return { ok: false, sentences: [words('kept')('new.fresh')] }
  if (!shown) return { ok: false, sentences: faults.map(({ sentence }) => sentence) }
  const blocks = [
    ...freezeBlocks(shown.blocks, form.system),
    ...freezeSteps('steps', words('workOut')('working.title'), shown.steps),
  ]
  const versions = versionsOf({ edition: content().edition, sums: SUMS_VERSION }, shown.blocks)
  const kept = within(inputPhrases(form.fields), blocks)
  if (!kept.ok) return kept
  return {
    ok: true,
    sheet: {
      calculation: name,
      title: form.label === '' ? words('workOut')(`${of.page}.title`) : form.label,
      address: addressOf(path, form.typed, versions),
      system: form.system,
      versions,
      recipe: null,
      figures: kept.figures,
    },
  }
}
