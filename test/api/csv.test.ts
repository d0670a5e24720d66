import { parse } from 'csv-parse/sync'
import { describe, expect, it } from 'vitest'
import { csvLine } from '#lib/api/csv.ts'

/** What a spreadsheet reads that parts cells by commas, and what it may make of them that parts them otherwise. */
const cellsIn = (line: string): string[] => parse(line).flat()
const piecesIn = (line: string): string[] =>
  line
    .replace(/\r\n$/, '')
    .split(/[;\t\r\n]/)
    .map((piece) => piece.replace(/^"(?!")/, ''))

const FORMULA = /^ *[=+\-@\uff1d\uff0b\uff0d\uff20]|^[\t\r\n]/

describe('csvLine(cells)', () => {
  it('leaves numbers and plain text as they are', () => {
    expect(csvLine([-5.25, 0, true, null, 'Barn wall', ['a', 'b'], 'lime 1:3 – hot', 'x-y = z'])).toBe(
      '-5.25,0,true,,Barn wall,a; b,lime 1:3 – hot,x-y = z\r\n',
    )
  })

  it.each([
    '=1+1',
    '+1',
    '-1',
    '@SUM(A1)',
    '\t=1+1',
    '\r=1+1',
    ' =1+1',
    '\uff1d1+1',
    'wall;=1+1;x',
    'wall;  =1+1;x',
    '"=1+1"',
    'a";=1+1;"',
    'a,=1+1',
    'a\n=1+1',
    'a\t=1+1\tb',
  ])('lets no spreadsheet find a formula in %j, whatever it parts cells by', (text) => {
    for (const cells of [[text], ['first', text, 'last'], [['first', text]]]) {
      const line = csvLine(cells)
      for (const cell of [...cellsIn(line), ...piecesIn(line)]) expect(cell).not.toMatch(FORMULA)
      expect(cellsIn(line)).toHaveLength(cells.length)
    }
  })
})
