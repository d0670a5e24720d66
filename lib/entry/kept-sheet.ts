import { z } from 'zod'
import { BASES, isRange } from '#lib/mortar/range.ts'
import { drawn } from './kept-drawn.ts'
import { upgraded } from './kept-upgrade.ts'

/**
 * What a kept sheet printed: its inputs and every part of its result, as they stood. Numbers are in the units in which
 * they were shown, so that nothing that is read later is worked out again.
 */

const short = z.string().max(600)
const long = z.string().max(6000)
const name = z.string().min(1).max(200)

const range = z
  .strictObject({ low: z.number(), typical: z.number(), high: z.number() })
  .refine(isRange, 'out-of-order')

const figure = z.strictObject({
  /** Null prints as not known. */
  value: z.union([range, z.number()]).nullable(),
  unit: z.string().min(1).max(40),
  /** `ratio` prints 1 : 3.1; `money` to the hundredth, in a currency that its label names. */
  as: z.enum(['ratio', 'money']).optional(),
  basis: z.enum(BASES).optional(),
  /** `source-id` or `source-id, locator`. */
  source: short.optional(),
  note: long.optional(),
})
export type KeptFigure = z.infer<typeof figure>

const said = z.strictObject({ words: long, basis: z.enum(BASES).optional(), source: short.optional() })

const cell = z.union([figure, said, long, z.null()])
export type KeptCell = z.infer<typeof cell>

const head = { name, title: short, lead: long.optional() }

const block = z.discriminatedUnion('kind', [
  z.strictObject({
    kind: z.literal('figures'),
    ...head,
    figures: z.array(figure.extend({ name, label: short })).max(100),
  }),
  z.strictObject({
    kind: z.literal('table'),
    ...head,
    /** The first names the rows. */
    columns: z
      .array(z.strictObject({ key: name, head: short, words: z.boolean().optional() }))
      .min(1)
      .max(30),
    rows: z.array(z.strictObject({ name, cells: z.record(name, cell) })).max(400),
    stack: z.boolean().optional(),
    bars: name.optional(),
  }),
  z.strictObject({
    kind: z.literal('notice'),
    tone: z.enum(['note', 'caution', 'hazard', 'invented', 'withdrawn']),
    title: short.optional(),
    text: long,
  }),
  z.strictObject({ kind: z.literal('note'), text: long }),
  /** Words one under the other, by a name that stays the same from one working to the next. */
  z.strictObject({
    kind: z.literal('list'),
    ...head,
    ordered: z.boolean().optional(),
    items: z.array(z.strictObject({ name, text: long, source: short.optional() })).max(100),
  }),
  /** What was drawn, as the numbers that it is drawn from, with the same in words. */
  z.strictObject({ kind: z.literal('drawing'), name, title: short, says: long, drawn }),
  /** How the figures were found, line by line. */
  z.strictObject({
    kind: z.literal('working'),
    name,
    title: short,
    steps: z
      .array(
        z.strictObject({
          symbol: short,
          /** What it stands for, in words. */
          means: short,
          /** Empty for an input. */
          formula: short,
          /** The formula with its numbers put in, written with a decimal point. */
          numbers: long,
          result: range,
          unit: z.string().min(1).max(40),
          source: short.exactOptional(),
        }),
      )
      .max(300),
  }),
])
export type KeptBlock = z.infer<typeof block>

/** Raise it when the form changes, and turn older ones into the new one in {@link readKeptFigures}. */
const KEPT_VERSION = 2

/** Figures and words that one sheet may print, and an entry that rests on it may copy. */
export const MOST_PRINTED = 600

/** Bytes of all that is kept of one sheet, as JSON; eight works with their working take some 50,000. */
export const MOST_BYTES = 200_000

export const keptFigures = z.strictObject({
  version: z.literal(KEPT_VERSION),
  /** What it was worked from, each as one phrase. */
  inputs: z.array(long).max(200),
  blocks: z.array(block).max(100),
  /** Every figure and word of the blocks as it printed, for whoever names the sheet as what they rest on. */
  printed: z
    .array(
      z.strictObject({
        label: short,
        value: long,
        /** What it costs its owner: it is never copied into what others read. */
        cost: z.literal(true).exactOptional(),
      }),
    )
    .max(MOST_PRINTED),
  /** Digest of the sheet without what it costs, where it costs something: the whole one would tell whether a guess is right. */
  openDigest: z
    .string()
    .regex(/^[0-9a-f]{10}$/)
    .exactOptional(),
})
export type KeptFigures = z.infer<typeof keptFigures>

/** Figures as they are kept, in the form of today. */
export const makeKeptFigures = (told: {
  readonly inputs: readonly string[]
  readonly blocks: readonly KeptBlock[]
  readonly printed: KeptFigures['printed']
  readonly openDigest?: string
}): KeptFigures => keptFigures.parse({ version: KEPT_VERSION, ...told })

/**
 * Kept figures as they were stored, in the form of today.
 *
 * @throws z.ZodError when they do not fit the form that they claim
 */
export const readKeptFigures = (stored: unknown): KeptFigures => keptFigures.parse(upgraded(stored))

/** What kept figures take as JSON. */
export const bytesOf = (figures: KeptFigures): number =>
  new TextEncoder().encode(JSON.stringify(figures)).length

/** Units that a sheet may be shown in. */
export const KEPT_SYSTEMS = ['metric', 'us'] as const
