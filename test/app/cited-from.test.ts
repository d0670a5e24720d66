import { expect, it } from 'vitest'
import { citedSources } from '#lib/content/gaps.ts'
import { content } from '#lib/content/index.ts'
import { citedFrom } from '../../app/sources/[id]/cited-from.ts'

// Reading it takes seconds on a busy machine, and no test should be charged with that.
content()

it('citedFrom(id) finds something for every source that content cites, and for no other', () => {
  const shown = [...content().sources.keys()].filter((id) =>
    Object.values(citedFrom(id)).some((list) => list.length > 0),
  )
  expect(shown.sort()).toEqual([...citedSources(content())].sort())
})
