import { expect, it } from 'vitest'
import { speaking } from '#app/asked.ts'
import { benchData } from '../../app/_ui/workshop/data.ts'
import { workOut } from '../../app/_ui/workshop/run.ts'
import { sand } from '../../app/work-out/sand/calculation.ts'

const data = benchData(sand)
const said = (sandMl: string, waterMl: string) =>
  workOut(sand, { show: 'fields', 'sand-ml': sandMl, 'water-ml': waterMl }, data).faults.map(({ sentence }) =>
    sentence.replace(/^[^:]*: /, '').replaceAll(/\s/g, ' '),
  )

it('/work-out/sand refuses as much water as sand, and says that less would do', () => {
  expect(said('1000', '1000')).toEqual(['1000 is too large. Give less than 1000 mL.'])
  expect(speaking('es', () => said('1000', '1000'))).toEqual([
    '1000 es demasiado grande. Dar menos de 1000 mL.',
  ])
})

it.each(['340ml', '340 mL', '24 m2', '24m²', '300–340 ml'])(
  '/work-out/sand asks to leave off the unit of %s',
  (text) => {
    expect(said('1000', text)).toEqual([
      `“${text}” has more in it than a number. Leave the unit off and give the figure in mL.`,
    ])
    expect(speaking('es', () => said('1000', text))).toEqual([
      `en «${text}» hay más que un número. Dejar fuera la unidad y dar la cifra en mL.`,
    ])
  },
)

it('/work-out/sand says of other words that they are no number', () => {
  expect(said('1000', 'a cup')).toEqual(['“a cup” is not a number. Give digits, such as 24, 0.5 or 1 1/2.'])
})
