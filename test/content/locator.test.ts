import { expect, test } from 'vitest'
import { locatorFault } from '#lib/content/locator.ts'

test.each([
  ['book', 'bk 2, ch. 5, § 1, l. 1888–1891'],
  ['book', 'pp. 78–80'],
  ['book', 'fol. 52'],
  ['entry-encyclopedia', 'vol. 4, pp. 523–524'],
  ['manuscript', 'leaf AAA-shahben00054-000052'],
  ['standard', 'annex A, table A.4'],
  ['standard', 'cl. 2.1.2.1(3)'],
  ['dataset', 'item AGL00200'],
  ['webpage', 'entry Calcium hydroxide'],
])('locatorFault(%j, %j) finds nothing wrong', (type, locator) => {
  expect(locatorFault(type, locator)).toBeUndefined()
})

test.each([
  ['book', 'page 78', 'locator "page 78" does not fit a source of type book'],
  ['standard', 'fol. 3', 'locator "fol. 3" does not fit a source of type standard'],
  ['webpage', 'p. 3', 'locator "p. 3" does not fit a source of type webpage'],
  ['book', 'p. 3, near the end', 'locator "near the end" does not fit a source of type book'],
  ['book', 'p.', 'locator "p." names no place after "p."'],
])('locatorFault(%j, %j) tells what is wrong', (type, locator, reason) => {
  expect(locatorFault(type, locator)).toContain(reason)
})

test('locatorFault(type, locator) refuses every locator for a type it does not know', () => {
  expect(locatorFault('motion_picture', 'p. 3')).toContain('does not fit')
})
