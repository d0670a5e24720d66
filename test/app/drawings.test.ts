import { expect, test } from 'vitest'
import { content } from '#lib/content/index.ts'
import type { IngredientInput } from '#lib/mortar/ingredient.ts'
import { proportions } from '#lib/mortar/proportions.ts'
import { exactly } from '#lib/mortar/range.ts'
import { slakingCourse } from '#lib/mortar/slaking-course.ts'
import { jointShareOf } from '#lib/mortar/takeoff/spec.ts'
import type { Work } from '#lib/mortar/takeoff.ts'
import { yieldOf } from '#lib/mortar/yield.ts'
import { compositionSays } from '../../app/_ui/drawings/composition.tsx'
import { compositionOf } from '../../app/_ui/drawings/composition-numbers.ts'
import { bondFor, type FaceNumbers, faceGeometry } from '../../app/_ui/drawings/face-geometry.ts'
import { JOINT_BOX, jointGeometry } from '../../app/_ui/drawings/joint-geometry.ts'
import { jointSays } from '../../app/_ui/drawings/joint-section.tsx'
import { boilingShare, slakeSays } from '../../app/_ui/drawings/slake-course.tsx'
import { SLAKE_BOX, slakeGeometry } from '../../app/_ui/drawings/slake-geometry.ts'
import { faceSays } from '../../app/_ui/drawings/wall-face.tsx'
import { drawnWork } from '../../app/_ui/drawings/work-numbers.ts'
import { value } from '../mortar/check.ts'

test.each([
  [25, 10],
  [120, 10],
  [15, 25],
  [400, 4],
])('a joint %d mm deep and %d mm wide is drawn on one scale, within its box', (deep, wide) => {
  const depthMm = { low: deep * 0.8, typical: deep, high: deep * 1.4 }
  const { scale, joint, depth } = jointGeometry({ depthMm, jointMm: exactly(wide) })
  expect(depth.typical - JOINT_BOX.face).toBeCloseTo(deep * scale, 9)
  expect(depth.high).toBeLessThanOrEqual(JOINT_BOX.right)
  // A hair's breadth is drawn as one, or it would not be seen.
  expect(joint.bottom - joint.top).toBeCloseTo(Math.max(3, wide * scale), 9)
})

test('a joint whose width was not given says so', () => {
  const says = jointSays({ depthMm: exactly(25), jointMm: null, system: 'metric', bed: false })
  expect(says).toContain('25 mm')
  expect(says).toContain('drawn freely')
  const us = jointSays({ depthMm: exactly(25.4), jointMm: exactly(12.7), system: 'us', bed: false })
  expect(us).toContain('1 in')
  expect(us).toContain('0.5 in')
})

const FACES: [string, FaceNumbers][] = [
  ['blocks', { lengthMm: 300, heightMm: 150, jointMm: 10 }],
  ['ashlar', { lengthMm: 900, heightMm: 400, jointMm: 5 }],
  ['small stones', { lengthMm: 60, heightMm: 40, jointMm: 15 }],
  ['bricks', { lengthMm: 215, heightMm: 65, jointMm: 10, heads: { widthMm: 102.5, share: 1 / 3 } }],
]
test.each(FACES)('a face of %s is drawn to scale, its units inside, none over another', (_, face) => {
  const { piece, units } = faceGeometry(face)
  expect(units.length).toBeGreaterThan(5)
  for (const { x, y, width, height } of units) {
    expect(x).toBeGreaterThanOrEqual(0)
    expect(x + width).toBeLessThanOrEqual(piece.width + 1e-9)
    expect(y + height).toBeLessThanOrEqual(piece.height + 1e-9)
  }
  for (const [at, one] of units.entries())
    for (const other of units.slice(at + 1)) {
      const beside = one.x + one.width <= other.x || other.x + other.width <= one.x
      const above = one.y + one.height <= other.y || other.y + other.height <= one.y
      expect(beside || above).toBe(true)
    }
})

test('the drawn share of joint comes to what the take-off reckons with', () => {
  const face = { lengthMm: 240, heightMm: 115, jointMm: 10 }
  const { piece, units } = faceGeometry(face)
  const stone = units.reduce((sum, { width, height }) => sum + width * height, 0)
  const drawn = 1 - stone / (piece.width * piece.height)
  expect(drawn).toBeCloseTo(jointShareOf(240, 115, 10), 1)
  expect(faceSays({ ...face, system: 'metric' })).toContain('12 %')
})

test('bonds are known by their share of headers, and others by the nearest', () => {
  expect(bondFor(1 / 3)).toEqual({ bond: 'flemish', exact: true })
  expect(bondFor(0.45)).toEqual({ bond: 'english', exact: false })
  const says = faceSays({
    lengthMm: 215,
    heightMm: 65,
    jointMm: 10,
    heads: { widthMm: 102.5, share: 0.45 },
    system: 'metric',
  })
  expect(says).toContain('nearest')
})

test.each<[Work, boolean, boolean]>([
  [
    { kind: 'pointing', areaM2: 1, unitLengthMm: 300, unitHeightMm: 150, jointMm: 10, depthMm: 25 },
    true,
    true,
  ],
  [{ kind: 'pointing-rubble', areaM2: 1, jointShare: 0.2, depthMm: 30 }, true, false],
  [
    {
      kind: 'bedding-brick',
      areaM2: 1,
      brickLengthMm: 215,
      brickHeightMm: 65,
      brickWidthMm: 102,
      jointMm: 10,
    },
    true,
    true,
  ],
  [{ kind: 'plaster', areaM2: 1, coat1Mm: 10 }, false, false],
  [{ kind: 'volume', volumeL: 10 }, false, false],
])('of $kind is drawn what it has a size of', (work, joint, face) => {
  const drawn = drawnWork(work)
  expect(drawn.joint !== undefined).toBe(joint)
  expect(drawn.face !== undefined).toBe(face)
})

const LIME_SAND: IngredientInput[] = [
  { material: 'lime-cl90', role: 'lime', parts: exactly(1), by: 'volume', state: 'ground-quicklime' },
  { material: 'sand-sharp', role: 'aggregate', parts: exactly(3), by: 'volume', state: 'dry' },
  { material: 'water', role: 'water', parts: null, by: 'volume', state: 'dry' },
]
const materials = Object.fromEntries(
  ['lime-cl90', 'sand-sharp', 'water'].map((id) => [id, content().materials.get(id)?.properties ?? {}]),
)

test('a composition keeps the sand and lets the lime grow as the sums say', () => {
  const worked = value(proportions({ ingredients: LIME_SAND, materials, draws: 100 }))
  const yields = value(yieldOf({ ingredients: LIME_SAND, materials, draws: 1 }))
  const lines = compositionOf(worked, LIME_SAND, yields)
  expect(lines.map(({ state }) => state)).toEqual([
    'lump-quicklime',
    'ground-quicklime',
    'dry-hydrate',
    'putty',
    'mortar',
  ])
  const amount = (state: string, kind: string) =>
    lines.find((line) => line.state === state)?.parts.find((part) => part.kind === kind)?.amount
  for (const line of lines.slice(0, 4)) expect(amount(line.state, 'filler')).toBeCloseTo(1, 9)
  expect(amount('ground-quicklime', 'lime')).toBeCloseTo(1 / 3, 9)
  expect(amount('putty', 'lime')).toBeGreaterThan(amount('ground-quicklime', 'lime') ?? 9)
  const mortar = lines.at(-1)?.parts.reduce((sum, part) => sum + part.amount, 0)
  expect(mortar).toBeCloseTo(yields.perFiller?.typical ?? 0, 9)
  const says = compositionSays({ lines, stateLabel: (state) => state, materialLabel: (id) => id })
  expect(says).toContain('Lime to 1 of sand-sharp: ')
  expect(says).toContain('ground-quicklime 0.33')
})

test('a mix whose quantities its source leaves out is not drawn', () => {
  const open = LIME_SAND.map((one) => (one.role === 'aggregate' ? { ...one, parts: null } : one))
  expect(compositionOf(value(proportions({ ingredients: open, materials, draws: 100 })), open)).toEqual([])
  const noLime = LIME_SAND.slice(1)
  expect(compositionOf(value(proportions({ ingredients: noLime, materials, draws: 100 })), noLime)).toEqual(
    [],
  )
})

test.each(['metric', 'us'] as const)('the course of a slake stays within its drawing, %s', (system) => {
  const points = value(
    slakingCourse({
      quicklimeKg: { low: 9, typical: 10, high: 11 },
      freeCaO: { low: 0.8, typical: 0.9, high: 0.95 },
      waterKg: 6,
      sandKg: 40,
      waterC: 15,
      sandC: -5,
    }),
  )
  const { temperature, water } = slakeGeometry(points, system)
  for (const { band, line, top, bottom } of [temperature, water]) {
    const numbers = [...`${band}${line}`.matchAll(/([\d.]+) (-?[\d.]+)/g)]
    expect(numbers).toHaveLength(33)
    for (const [, x, y] of numbers) {
      expect(Number(x)).toBeGreaterThanOrEqual(SLAKE_BOX.left)
      expect(Number(x)).toBeLessThanOrEqual(SLAKE_BOX.right)
      expect(Number(y)).toBeGreaterThanOrEqual(top - 0.05)
      expect(Number(y)).toBeLessThanOrEqual(bottom + 0.05)
    }
  }
  const says = slakeSays({ points, system })
  // Little water and much lime: it boils before all of it has slaked.
  const boils = boilingShare(points) ?? 0
  const at = points.filter(({ share }) => share <= boils).at(-1)
  expect(boils).toBeGreaterThan(0)
  expect(at?.averageC.typical).toBeLessThanOrEqual(100)
  expect(points.find(({ share }) => share > boils)?.averageC.typical).toBeGreaterThanOrEqual(100)
  expect(says).toContain('dry spots run far hotter')
  expect(says).toContain(system === 'us' ? '°F' : '°C')
})
