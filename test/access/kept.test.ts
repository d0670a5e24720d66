import { describe, expect, it } from 'vitest'
import { PAGES, type PageDoor } from '#lib/access/doors.ts'
import { keepOf } from '#lib/access/kept.ts'

describe('keepOf(path)', () => {
  it.each([
    ['/', 'page'],
    ['/recipes/hot-lime-for-rubble', 'page'],
    ['/recipes/hot-lime-for-rubble/job', 'page'],
    ['/tables/vitruvius-mortar', 'page'],
    ['/cases/quollbrook-barn', 'page'],
    ['/guides/quicklime-and-slaking', 'page'],
    ['/glossary', 'page'],
    ['/work-out/sand', 'page'],
    ['/write/01890000-0000-7000-8000-000000000001/place', 'draft'],
    ['/write/01890000-0000-7000-8000-000000000001/both', null],
    ['/write/blank', 'blank'],
    ['/write', null],
    ['/write/new', null],
    ['/account', null],
    ['/sign-in', null],
    ['/sign-in/link', null],
    ['/review', null],
    ['/review/an-entry', null],
    ['/steward', null],
    ['/steward/people/mason', null],
    ['/kept', null],
    ['/no-such-page', null],
    ['/api/v1/recipes', null],
  ] as const)('of %s is %s', (path, keep) => {
    expect(keepOf(path)).toBe(keep)
  })

  it('takes no page that is not for anyone for one to read', () => {
    const doors = Object.keys(PAGES) as PageDoor[]
    const wrong = doors.filter(
      (door) => keepOf(door.replaceAll(/\[[^\]]+\]/g, 'x')) === 'page' && PAGES[door] !== 'anyone',
    )
    expect(wrong).toEqual([])
  })
})
