import { expect, it } from 'vitest'
import { content } from '#lib/content/index.ts'
import { proportionText, type Stated } from '../../app/_ui/ingredients.tsx'

// Reading it takes seconds on a busy machine, and no test should be charged with that.
content()

const lime = (state: Stated['state']): Stated => ({
  material: 'lime-fat',
  parts: { low: 1, high: 1 },
  by: 'volume',
  state,
})
const sand: Stated = { material: 'sand-pit', parts: { low: 2, high: 3 }, by: 'volume', state: 'not-stated' }

it('proportionText(ingredients) never leaves a lime without its state, and says no state of sand that none was told of', () => {
  expect(proportionText([lime('putty'), sand])).toBe('1 fat lime (putty) : 2–3 pit sand')
  expect(proportionText([lime('not-stated'), sand])).toBe('1 fat lime (state not stated) : 2–3 pit sand')
})
