import ICAL from 'ical.js'
import { describe, expect, it } from 'vitest'
import { icalendar } from '../../app/due/icalendar.ts'

const DAY = {
  uid: '0192-1@mortars.example',
  on: '2028-02-29',
  title:
    'Visit the wall: Müür, “Kivi; ja lubi”, 𝕊-course \\ pier, with a name that is far too long for one line',
  text: 'Read joint and stone together.\nWrite down the days since rain.',
  url: 'https://mortars.example/cases/muur#work-repointing',
}

// Read back by ical.js (https://github.com/kewisch/ical.js), a parser of RFC 5545 by others.
describe('icalendar(name, days, stamp)', () => {
  const text = icalendar('Visits due', [DAY], new Date('2026-11-25T12:00:00Z'))

  it('is read by others as it was meant', () => {
    const calendar = new ICAL.Component(ICAL.parse(text))
    const [event] = calendar.getAllSubcomponents('vevent').map((one) => new ICAL.Event(one))
    expect([event?.uid, event?.summary, event?.description]).toEqual([DAY.uid, DAY.title, DAY.text])
    expect([event?.startDate.isDate, event?.startDate.toString(), event?.endDate.toString()]).toEqual([
      true,
      '2028-02-29',
      '2028-03-01',
    ])
    expect(event?.component.getFirstPropertyValue('url')).toBe(DAY.url)
  })

  it('ends lines in CR LF, none of them longer than 75 bytes (RFC 5545, 3.1), no character cut in two', () => {
    expect(text.endsWith('\r\n')).toBe(true)
    const lines = text.split('\r\n')
    expect(lines.some((line) => line.includes('\n'))).toBe(false)
    expect(Math.max(...lines.map((line) => Buffer.byteLength(line)))).toBeLessThanOrEqual(75)
    expect(text).not.toContain('\ufffd')
  })

  it('is a calendar without days too', () => {
    const calendar = new ICAL.Component(ICAL.parse(icalendar('Visits due', [], new Date(0))))
    expect(calendar.getAllSubcomponents('vevent')).toEqual([])
  })
})
