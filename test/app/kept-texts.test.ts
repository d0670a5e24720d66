import { afterEach, beforeEach, expect, test, vi } from 'vitest'
import { findKept, keepIn, newPlace, putIn, textsHere } from '../../app/_write/kept-texts.ts'

const DRAFT = '01890000-0000-7000-8000-000000000001'
const SAVED = { time: '12:00', version: 2, conflicts: [], waiting: false, sent: false, said: [] }

/** What a browser keeps: its keys are its own, as those of the platform's are. */
function makeStore(): object {
  const store: Record<string, string> = {}
  const methods = {
    getItem: (key: string) => store[key] ?? null,
    setItem: (key: string, text: string) => {
      store[key] = text
    },
    removeItem: (key: string) => {
      delete store[key]
    },
  }
  return Object.setPrototypeOf(store, methods)
}

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
