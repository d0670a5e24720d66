import { afterEach, beforeEach, expect, test, vi } from 'vitest'
import type { About } from '../../app/_write/about.ts'
import { linesOf } from '../../app/_write/begun-lines.ts'
import { findKept, keepIn, letGoOfCovered, newPlace, putIn, textsHere } from '../../app/_write/kept-texts.ts'
import { makeStore } from '../support/browser-store.ts'

const DRAFT = '01890000-0000-7000-8000-000000000001'
const SAVED = { time: '12:00', version: 2, conflicts: [], waiting: false, sent: false, said: [] }

beforeEach(() => {
  vi.stubGlobal('localStorage', makeStore())
})
afterEach(() => {
  vi.unstubAllGlobals()
})

const title = (was: string, is: string) => ({ title: { was, is } })

test('putIn() lets go of what arrived', async () => {
  vi.stubGlobal('fetch', async () => Response.json(SAVED))
  keepIn(newPlace(DRAFT), title('', 'Barn'))
  const found = findKept(DRAFT, {})
  expect(await putIn(DRAFT, 'basics', found ?? { at: '', texts: [] })).toEqual({
    kind: 'kept',
    to: `/write/${DRAFT}/basics`,
  })
  expect(textsHere(DRAFT)).toBeNull()
})

test('putIn() leaves what an open window typed on while it was sent', async () => {
  const place = newPlace(DRAFT)
  vi.stubGlobal('fetch', async () => {
    keepIn(place, title('', 'Barn at the mill'))
    return Response.json(SAVED)
  })
  keepIn(place, title('', 'Barn'))
  await putIn(DRAFT, 'basics', textsHere(DRAFT) ?? { at: '', texts: [] })
  expect(textsHere(DRAFT)?.texts).toEqual([
    { place, changes: title('', 'Barn at the mill'), at: expect.any(String) },
  ])
})

test('textsHere() holds also what an old copy of the page takes for saved', () => {
  keepIn(newPlace(DRAFT), title('Mill', 'Barn'))
  expect(textsHere(DRAFT)?.texts.map(({ changes }) => changes)).toEqual([title('Mill', 'Barn')])
  expect(findKept(DRAFT, { title: 'Barn' })).toBeNull()
  expect(textsHere(DRAFT)).toBeNull()
})

const BEGUN: About = {
  by: 'mason-1',
  asked: { of: 'barn' },
  title: 'A visit to the barn',
  page: `/write/blank?of=barn&key=${DRAFT}`,
  state: 'begun',
}
const NONE = { at: '', texts: [] }

test('putIn() sends with its text who wrote it, and of a draft that was begun here what it begins from', async () => {
  const sent: unknown[] = []
  vi.stubGlobal('fetch', async (_: string, { body }: RequestInit) => {
    const { by, begin } = JSON.parse(String(body))
    sent.push([by, begin])
    return Response.json(SAVED)
  })
  keepIn(newPlace(DRAFT), title('', 'Barn'), BEGUN)
  await putIn(DRAFT, 'seen', textsHere(DRAFT) ?? NONE)
  keepIn(newPlace(DRAFT), title('', 'Barn'), { ...BEGUN, state: 'there' })
  await putIn(DRAFT, 'seen', textsHere(DRAFT) ?? NONE)
  expect(sent).toEqual([
    ['mason-1', { of: 'barn' }],
    ['mason-1', undefined],
  ])
})

test('putIn() keeps the text of a draft that was discarded, to begin another with', async () => {
  vi.stubGlobal('fetch', async () => new Response('{}', { status: 404 }))
  keepIn(newPlace(DRAFT), title('Mill', 'Barn'), { ...BEGUN, state: 'there', page: `/write/${DRAFT}/seen` })
  expect(await putIn(DRAFT, 'seen', textsHere(DRAFT) ?? NONE)).toEqual({ kind: 'gone' })
  expect(textsHere(DRAFT)?.texts).toEqual([
    expect.objectContaining({ changes: title('Mill', 'Barn'), about: { ...BEGUN, state: 'discarded' } }),
  ])
})

test('letGoOfCovered() lets go of what a later window holds all of, and of nothing else', () => {
  vi.useFakeTimers()
  const [first, second, third] = [newPlace(DRAFT), newPlace(DRAFT), newPlace(DRAFT)]
  const keepLater = (place: string, changes: ReturnType<typeof title>) => {
    vi.advanceTimersByTime(1000)
    keepIn(place, changes)
  }
  keepLater(first, title('', 'Barn'))
  keepLater(second, title('', 'Mill'))
  keepLater(third, { ...title('', 'Barn'), note: { was: '', is: 'Wet' } } as never)
  vi.useRealTimers()
  letGoOfCovered(DRAFT)
  expect(textsHere(DRAFT)?.texts.map(({ place }) => place)).toEqual([second, third])
})

test('linesOf() are drafts of this reader alone, by the title typed last; what is held no longer is left out, but for what went up', () => {
  const [mine, theirs] = ['01890000-0000-7000-8000-000000000002', '01890000-0000-7000-8000-000000000003']
  const text = (at: string, is: string, about: About) => ({ place: at, at, changes: title('', is), about })
  const found = [
    { draft: DRAFT, texts: [text('2026-05-01', 'Barn', BEGUN), text('2026-05-02', ' Byre ', BEGUN)] },
    { draft: theirs, texts: [text('2026-05-03', 'Kiln', { ...BEGUN, by: 'mason-2' })] },
    { draft: mine, texts: [text('2026-05-04', '', { ...BEGUN, state: 'discarded' })] },
  ]
  const lines = linesOf(found, 'mason-1', [], new Set())
  expect(lines.map(({ draft, title: shown, state, at }) => [draft, shown, state, at])).toEqual([
    [mine, 'A visit to the barn', 'discarded', '2026-05-04'],
    [DRAFT, 'Byre', 'begun', '2026-05-02'],
  ])
  const after = (sent: string[]) =>
    linesOf(found.slice(2), 'mason-1', lines, new Set(sent)).map(({ draft, state }) => [draft, state])
  expect(after([DRAFT, mine])).toEqual([
    [mine, 'discarded'],
    [DRAFT, 'up'],
  ])
  expect(after([])).toEqual([[mine, 'discarded']])
  expect(linesOf(found, 'guest', [], new Set())).toEqual([])
})
