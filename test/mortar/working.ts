import { expect } from 'vitest'
import type { Step } from '#lib/mortar/explain.ts'

const PLAIN = /^(?:[\d\s.,()+−·/-]|max\(|min\()+$/

/** Fails unless the numbers of a line of working, where they are plain arithmetic, come to its result. */
export function expectWorking({
  numbers,
  result,
  symbol,
}: Pick<Step, 'numbers' | 'result' | 'symbol'>): void {
  if (!PLAIN.test(numbers)) return
  const found = evaluate(numbers)
  expect(
    Math.abs(found - result.typical),
    `${symbol}: ${numbers} = ${found}, not ${result.typical}`,
  ).toBeLessThan(1e-3 * Math.abs(result.typical) + 1e-9)
}

/** Plain arithmetic as printed: sums of products, brackets, min and max, read from left to right. */
function evaluate(text: string): number {
  const tokens = text.replaceAll('−', '-').match(/\d+(?:\.\d+)?|max\(|min\(|[(),+\-·/]/g) ?? []
  let at = 0
  const atom = (): number => {
    const token = tokens[at++]
    if (token !== '(' && token !== 'max(' && token !== 'min(') return Number(token)
    const found = [sum()]
    while (tokens[at++] === ',') found.push(sum())
    return token === 'min(' ? Math.min(...found) : Math.max(...found)
  }
  const product = (): number => {
    let result = atom()
    while (tokens[at] === '·' || tokens[at] === '/')
      result = tokens[at++] === '·' ? result * atom() : result / atom()
    return result
  }
  const sum = (): number => {
    let result = product()
    while (tokens[at] === '+' || tokens[at] === '-') result += tokens[at++] === '+' ? product() : -product()
    return result
  }
  return sum()
}
