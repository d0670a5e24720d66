import { afterEach, beforeEach, expect, test, vi } from 'vitest'
import { keepIn, newPlace, textsHere } from '../../app/_write/kept-texts.ts'
import { sendLeft, sentOf, TRIED } from '../../app/_write/send-left.ts'
import { makeStore } from '../support/browser-store.ts'

const [TAKEN, OTHERS, DISCARDED] = [1, 2, 3].map((one) => `01890000-0000-7000-8000-00000000000${one}`)
const ANSWERS = new Map([
  [TAKEN, () => Response.json({ version: 2, waiting: false })],
  [OTHERS, () => Response.json({ detail: 'Not yours' }, { status: 409 })],
])

beforeEach(() => {
  vi.stubGlobal('localStorage', makeStore())
  vi.stubGlobal('sessionStorage', makeStore())
  vi.stubGlobal('window', new EventTarget())
  vi.stubGlobal('fetch', async (address: string) => ANSWERS.get(address.split('/').at(-1))?.())
})
afterEach(() => {
  vi.unstubAllGlobals()
})

test('sendLeft() lets go of what was taken and tells of that alone; somebody else’s text is no discarded draft', async () => {
  const keep = (draft = '', state: 'there' | 'discarded' = 'there') =>
    keepIn(
      newPlace(draft),
      { note: { was: '', is: 'Wet' } },
      { by: 'mason-1', asked: { of: 'barn' }, title: 'A visit', page: `/write/${draft}/seen`, state },
    )
  keep(TAKEN)
  keep(OTHERS)
  keep(DISCARDED, 'discarded')
  const told: string[][] = []
  window.addEventListener(TRIED, (event) => told.push([...sentOf(event as CustomEvent)]))
  await sendLeft(true)
  expect(told).toEqual([[TAKEN]])
  const states = [TAKEN, OTHERS, DISCARDED].map((draft = '') => textsHere(draft)?.texts[0]?.about?.state)
  expect(states).toEqual([undefined, 'there', 'discarded'])
})
