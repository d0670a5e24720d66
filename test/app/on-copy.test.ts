import { afterEach, beforeEach, expect, test, vi } from 'vitest'
import type { About } from '../../app/_write/about.ts'
import { beginAnew, keepIn, newPlace, textsHere } from '../../app/_write/kept-texts.ts'
import { onCopy, type Waiting } from '../../app/_write/on-copy.ts'
import { makeStore } from '../support/browser-store.ts'

const DRAFT = '01890000-0000-7000-8000-000000000001'
const THERE: About = {
  by: 'mason-1',
  asked: { of: 'barn' },
  title: 'A visit to the barn',
  page: `/write/${DRAFT}/seen`,
  state: 'there',
}
const form = Object.assign(new EventTarget(), { elements: [] }) as unknown as HTMLFormElement

let sent: { begin?: unknown }[]
let told: Waiting['kind'][]
let status: number
let stop: () => void
beforeEach(() => {
  vi.useFakeTimers()
  vi.stubGlobal('localStorage', makeStore())
  vi.stubGlobal('window', new EventTarget())
  vi.stubGlobal('fetch', async (_: string, { body }: RequestInit) => {
    sent.push(JSON.parse(String(body)))
    return new Response('{}', { status })
  })
  ;[sent, told, status] = [[], [], 404]
  stop = onCopy(form, DRAFT, 'seen', ({ kind }) => told.push(kind))
})
afterEach(() => {
  stop()
  vi.useRealTimers()
  vi.unstubAllGlobals()
})

const keep = (about: About) => keepIn(newPlace(DRAFT), { note: { was: '', is: 'Wet' } }, about)
const aMinute = () => vi.advanceTimersByTimeAsync(60_000)

test('onCopy() sends what waits again and again while there is no signal', async () => {
  status = 503
  keep(THERE)
  await aMinute()
  expect(sent.length).toBeGreaterThan(2)
})

test('onCopy() sends nothing more once the draft was discarded, so that it is not begun again by itself', async () => {
  keep(THERE)
  await aMinute()
  expect(sent.map(({ begin }) => begin)).toEqual([undefined])
  expect(told.slice(0, 2)).toEqual(['gone', 'gone'])
  expect(textsHere(DRAFT)?.texts[0]?.about?.state).toBe('discarded')
})

test('onCopy() begins another draft with it as soon as its writer says so', async () => {
  keep({ ...THERE, state: 'discarded' })
  await aMinute()
  expect(sent).toEqual([])
  beginAnew(DRAFT)
  status = 503
  await aMinute()
  expect(sent[0]).toHaveProperty('begin')
})
